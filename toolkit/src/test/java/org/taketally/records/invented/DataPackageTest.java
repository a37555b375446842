package org.taketally.records.invented;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every folder of datasets is a data package whose files are what its descriptions say.
 *
 * <p>Field types and constraints: Table Schema of Data Package 2.0.
 */
class DataPackageTest {

  private static final Path DATASETS = Path.of(System.getProperty("taketally.root"), "datasets");

  static Stream<Path> folders() throws IOException {
    try (Stream<Path> entries = Files.walk(DATASETS, 2)) {
      return entries
          .filter(folder -> Files.exists(folder.resolve("datapackage.json")))
          .sorted()
          .toList()
          .stream();
    }
  }

  @ParameterizedTest
  @MethodSource("folders")
  void says_where_it_comes_from_and_how_it_may_be_used(Path folder) throws IOException {
    assertThat(Files.readString(folder.resolve("README.md")))
        .contains("**Origin**", "**Licence**", "CC0", "## Size", "## Known faults")
        .contains("## Citation")
        .contains(published(folder) ? "**Origin**: published counts" : "invented");
    JsonObject described = describe(folder);
    assertThat(described.get("$schema").getAsString())
        .isEqualTo("https://datapackage.org/profiles/2.0/datapackage.json");
    assertThat(described.get("name").getAsString()).isEqualTo(folder.getFileName().toString());
    assertThat(described.has("title")).isTrue();
    assertThat(described.has("sources")).isEqualTo(published(folder));
    assertThat(first(described, "licenses").get("name").getAsString()).isEqualTo("CC0-1.0");
  }

  @ParameterizedTest
  @MethodSource("folders")
  void describes_every_file_in_it(Path folder) throws IOException {
    Set<String> known = new HashSet<>(Set.of("README.md", "datapackage.json", "columns.csv"));
    for (JsonObject resource : resources(folder)) {
      known.add(resource.get("path").getAsString());
      assertThat(resource.get("encoding").getAsString()).isEqualTo("utf-8");
    }
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .containsExactlyInAnyOrderElementsOf(known);
    }
  }

  @ParameterizedTest
  @MethodSource("folders")
  void holds_what_the_schema_allows(Path folder) throws IOException {
    for (JsonObject resource : resources(folder)) {
      if (resource.has("schema")) {
        new TableCheck(folder, resource).run();
      }
    }
  }

  @ParameterizedTest
  @MethodSource("folders")
  void columns_csv_and_data_package_say_the_same(Path folder) throws IOException {
    Map<String, List<String>> fields = new HashMap<>();
    for (JsonObject resource : resources(folder)) {
      if (resource.has("schema")) {
        String file = resource.get("path").getAsString();
        fields.put(file, new ArrayList<>());
        for (JsonObject field : objects(resource.getAsJsonObject("schema"), "fields")) {
          fields
              .get(file)
              .add(field.get("name").getAsString() + " " + field.get("type").getAsString());
        }
      }
    }
    Map<String, List<String>> columns = new HashMap<>();
    for (NamedCsvRecord row : table(folder.resolve("columns.csv"))) {
      assertThat(row.getField("meaning")).as(row.toString()).isNotBlank();
      for (String file : fields.keySet()) {
        if (matches(row.getField("file"), file)) {
          columns
              .computeIfAbsent(file, name -> new ArrayList<>())
              .add(row.getField("name") + " " + row.getField("type"));
        }
      }
    }
    assertThat(columns).isEqualTo(fields);
  }

  @ParameterizedTest
  @MethodSource("folders")
  void travels_inside_the_jar(Path folder, @TempDir Path copy) throws IOException {
    List<Path> copied = BundledDatasets.copyTo(DATASETS.relativize(folder).toString(), copy);
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) {
        Path twin = copy.resolve(file.getFileName());
        assertThat(copied).contains(twin);
        assertThat(twin).hasSameBinaryContentAs(file);
      }
    }
  }

  /** What stands there is real and was printed by others; everything else is invented. */
  private static boolean published(Path folder) {
    return folder.getParent().endsWith("historic-counts");
  }

  private static boolean matches(String patterns, String file) {
    return Stream.of(patterns.split(";"))
        .anyMatch(pattern -> file.matches(pattern.replace(".", "\\.").replace("*", ".*")));
  }

  private static JsonObject describe(Path folder) throws IOException {
    return JsonParser.parseString(Files.readString(folder.resolve("datapackage.json")))
        .getAsJsonObject();
  }

  private static List<JsonObject> resources(Path folder) throws IOException {
    return objects(describe(folder), "resources");
  }

  private static JsonObject first(JsonObject parent, String name) {
    return objects(parent, name).get(0);
  }

  private static List<JsonObject> objects(JsonObject parent, String name) {
    List<JsonObject> objects = new ArrayList<>();
    for (JsonElement element : parent.getAsJsonArray(name)) {
      objects.add(element.getAsJsonObject());
    }
    return objects;
  }

  private static List<NamedCsvRecord> table(Path file) throws IOException {
    try (CsvReader<NamedCsvRecord> rows =
        CsvReader.builder().ofNamedCsvRecord(file, StandardCharsets.UTF_8)) {
      return rows.stream().toList();
    }
  }

  /** One file against its schema. */
  private record TableCheck(Path folder, JsonObject resource) {

    void run() throws IOException {
      List<NamedCsvRecord> rows = table(folder.resolve(resource.get("path").getAsString()));
      assertThat(rows).isNotEmpty();
      List<JsonObject> fields = objects(resource.getAsJsonObject("schema"), "fields");
      assertThat(rows.get(0).getHeader())
          .containsExactlyElementsOf(
              fields.stream().map(f -> f.get("name").getAsString()).toList());
      for (JsonObject field : fields) {
        column(rows, field);
      }
      key(rows);
    }

    private void column(List<NamedCsvRecord> rows, JsonObject field) {
      Set<String> seen = new HashSet<>();
      JsonObject constraints =
          field.has("constraints") ? field.getAsJsonObject("constraints") : new JsonObject();
      for (NamedCsvRecord row : rows) {
        String value = row.getField(field.get("name").getAsString());
        if (value.isEmpty()) {
          assertThat(constraints.has("required")).as(row.toString()).isFalse();
          continue;
        }
        type(field.get("type").getAsString(), value);
        within(constraints, value, row.toString());
        assertThat(seen.add(value) || !constraints.has("unique")).as(row.toString()).isTrue();
      }
    }

    private static void type(String type, String value) {
      switch (type) {
        case "integer" -> Long.parseLong(value);
        case "number" -> Double.parseDouble(value);
        case "date" -> LocalDate.parse(value);
        default -> assertThat(type).isEqualTo("string");
      }
    }

    private static void within(JsonObject constraints, String value, String row) {
      if (constraints.has("enum")) {
        assertThat(constraints.getAsJsonArray("enum").asList())
            .as(row)
            .anyMatch(allowed -> allowed.getAsString().equals(value));
      }
      if (constraints.has("minimum")) {
        assertThat(Double.parseDouble(value))
            .as(row)
            .isGreaterThanOrEqualTo(constraints.get("minimum").getAsDouble());
      }
      if (constraints.has("maximum")) {
        assertThat(Double.parseDouble(value))
            .as(row)
            .isLessThanOrEqualTo(constraints.get("maximum").getAsDouble());
      }
    }

    private void key(List<NamedCsvRecord> rows) {
      JsonObject schema = resource.getAsJsonObject("schema");
      if (!schema.has("primaryKey")) {
        return;
      }
      Set<List<String>> seen = new HashSet<>();
      for (NamedCsvRecord row : rows) {
        List<String> key = new ArrayList<>();
        for (JsonElement name : schema.getAsJsonArray("primaryKey")) {
          key.add(row.getField(name.getAsString()));
        }
        assertThat(seen.add(key)).as("twice: %s", key).isTrue();
      }
    }
  }
}
