package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.RecordColumn;

/**
 * datasets/graft-records.schema.json and docs/record-columns.md say what {@link RecordColumn} and
 * {@link DerivedColumn} say. Table Schema: Data Package standard, version 2.0.
 */
class RecordColumnTest {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root"));
  private static final Gson JSON =
      new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create();

  @Test
  void schema_is_what_reading_expects() throws IOException {
    isKept(ROOT.resolve("datasets/graft-records.schema.json"), JSON.toJson(schema()) + "\n");
  }

  @Test
  void page_lists_every_column() throws IOException {
    isKept(ROOT.resolve("docs/record-columns.md"), page());
  }

  private static void isKept(Path file, String text) throws IOException {
    if ("write".equals(System.getProperty("golden"))) {
      Files.writeString(file, text);
    }
    assertThat(Files.readString(file)).isEqualTo(text);
  }

  private static JsonObject schema() {
    JsonObject schema = new JsonObject();
    schema.addProperty("$schema", "https://datapackage.org/profiles/2.0/tableschema.json");
    schema.addProperty("fieldsMatch", "partial");
    JsonArray missing = new JsonArray();
    missing.add("");
    schema.add("missingValues", missing);
    JsonArray fields = new JsonArray();
    for (RecordColumn column : RecordColumn.values()) {
      fields.add(field(column));
    }
    schema.add("fields", fields);
    return schema;
  }

  private static JsonObject field(RecordColumn column) {
    JsonObject field = new JsonObject();
    field.addProperty("name", column.columnName());
    field.addProperty("type", type(column.kind()));
    field.addProperty("description", meaning(column));
    JsonObject constraints = new JsonObject();
    if (column.needed()) {
      constraints.addProperty("required", true);
    }
    if (column.closed()) {
      JsonArray levels = new JsonArray();
      column.allowed().forEach(levels::add);
      constraints.add("enum", levels);
    }
    if (column.kind() == ColumnKind.COUNT) {
      constraints.addProperty("minimum", (int) column.lowest());
    } else if (column.kind() == ColumnKind.NUMBER) {
      constraints.addProperty("minimum", column.lowest());
      constraints.addProperty("maximum", column.highest());
    }
    if (constraints.size() > 0) {
      field.add("constraints", constraints);
    }
    if (!column.unit().isEmpty()) {
      field.addProperty("unit", column.unit());
    }
    return field;
  }

  private static String type(ColumnKind kind) {
    return switch (kind) {
      case TEXT, LEVELS -> "string";
      case NUMBER -> "number";
      case COUNT -> "integer";
      case DATE -> "date";
    };
  }

  private static String meaning(RecordColumn column) {
    return column.allowed().isEmpty() || column.closed()
        ? column.meaning()
        : column.meaning() + "; known names: " + String.join(", ", column.allowed());
  }

  private static String page() {
    StringBuilder page =
        new StringBuilder(
            """
            # Columns of graft records

            One row is one graft, or one batch of like grafts. How sheets are read is told in [records.md](records.md); the same list as a Table Schema (Data Package 2.0) is [graft-records.schema.json](../datasets/graft-records.schema.json). Where a list of names is given, the first is the one others are compared with.

            | column | holds | unit | values | meaning |
            |---|---|---|---|---|
            """);
    for (RecordColumn column : RecordColumn.values()) {
      row(page, column.columnName() + (column.needed() ? "` (needed)" : "`"), column.kind());
      page.append(" %s | %s | %s |\n".formatted(column.unit(), values(column), column.meaning()));
    }
    page.append(
        """

        One of `takes` and `outcome` is needed too. Other columns are kept and can be used as names or numbers.

        ## Worked out from these

        | column | holds | unit | how |
        |---|---|---|---|
        """);
    for (DerivedColumn column : DerivedColumn.values()) {
      row(page, column.columnName() + "`", column.kind());
      page.append(" %s | %s |\n".formatted(column.unit(), column.meaning()));
    }
    page.append(
        """

        ## Repeated assessments

        A second file, one row each time a graft or batch was looked at: `record` and `assessed_date` as above, and `%s`: %s.
        """
            .formatted(KnownColumns.ALIVE.name(), KnownColumns.ALIVE.meaning()));
    return page.toString();
  }

  private static void row(StringBuilder page, String name, ColumnKind kind) {
    page.append("| `%s | %s |".formatted(name, kind.word()));
  }

  private static String values(RecordColumn column) {
    String names =
        column.allowed().stream().map(name -> "`" + name + "`").collect(Collectors.joining(", "));
    return switch (column.kind()) {
      case LEVELS -> names + (names.isEmpty() || column.closed() ? "" : ", or another");
      case NUMBER -> "%s to %s".formatted(plain(column.lowest()), plain(column.highest()));
      case COUNT -> "%s or more".formatted(plain(column.lowest()));
      case TEXT, DATE -> "";
    };
  }

  private static String plain(double number) {
    return number == Math.rint(number) ? "%d".formatted((long) number) : "" + number;
  }
}
