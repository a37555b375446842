package org.taketally.publish.opendata;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.List;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.ColumnRule;
import org.taketally.records.columns.KnownColumns;
import org.taketally.wording.AnswerColumn;
import org.taketally.wording.AnswerTable;
import org.taketally.wording.opendata.FileWords;
import org.taketally.wording.opendata.Heading;

/** Columns of tables as fields of Table Schema 2.0. */
final class TableFields {

  private TableFields() {}

  static JsonObject field(String name, String type, String meaning) {
    JsonObject field = new JsonObject();
    field.addProperty("name", name);
    field.addProperty("type", type);
    field.addProperty("description", meaning);
    return field;
  }

  /** Columns of text. */
  static JsonArray texts(List<Heading> headings) {
    JsonArray fields = new JsonArray();
    headings.forEach(heading -> fields.add(field(heading.name(), "string", heading.meaning())));
    return fields;
  }

  /** A column of the records; of a column of the user's own only the kind is known. */
  static JsonObject field(String name, ColumnKind kind) {
    ColumnRule rule = KnownColumns.rule(name);
    boolean ours = KnownColumns.isKnown(name);
    String meaning = rule.meaning().isEmpty() ? FileWords.ownColumn() : rule.meaning();
    JsonObject field = field(name, type(kind), meaning);
    JsonObject constraints = new JsonObject();
    if (rule.needed()) {
      constraints.addProperty("required", true);
    }
    if (rule.closed()) {
      JsonArray allowed = new JsonArray();
      rule.allowed().forEach(allowed::add);
      constraints.add("enum", allowed);
    }
    if (ours && kind == ColumnKind.COUNT) {
      constraints.addProperty("minimum", (int) rule.lowest());
    } else if (ours && kind == ColumnKind.NUMBER) {
      constraints.addProperty("minimum", rule.lowest());
      constraints.addProperty("maximum", rule.highest());
    }
    if (!constraints.isEmpty()) {
      field.add("constraints", constraints);
    }
    if (!rule.unit().isEmpty()) {
      field.addProperty("unit", rule.unit());
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

  /** The columns of an answer's table, as docs/answer-columns.md lists them. */
  static JsonArray of(AnswerTable table) {
    JsonArray fields = new JsonArray();
    for (AnswerColumn column : table.columns()) {
      String type =
          switch (column.kind()) {
            case NAME, WORDS -> "string";
            case COUNT -> "integer";
            case FLAG -> "boolean";
            default -> "number";
          };
      fields.add(field(column.columnName(), type, column.meaning()));
    }
    return fields;
  }
}
