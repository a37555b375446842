package org.taketally.records;

import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.Locale;
import org.taketally.records.columns.RecordColumn;

/** Proposes how the numbers of a sheet are written: decimal sign and units. */
final class ProposedNumbers {

  private static final String NUMBER = "-?\\d+(\\.\\d+)?";
  private static final String EITHER_SIGN = "-?\\d+([.,]\\d+)?";
  private static final String COMMA = "-?\\d+,\\d{1,2}";
  private static final String POINT = "-?\\d+\\.\\d+";
  private static final double NEARLY_ALL = 0.9;

  private final ProposedSheet sheet;
  private long commas;
  private long points;

  ProposedNumbers(ProposedSheet sheet) {
    this.sheet = sheet;
  }

  /** Looks at a column of ours, and adds its unit to its entry if it isn't ours. */
  void propose(RecordColumn column, String heading, JsonObject entry) {
    SheetValues values = sheet.values(heading);
    see(values);
    String unit = unit(column, heading, values);
    if (!unit.isEmpty()) {
      entry.addProperty("unit", unit);
      sheet.because(
          "\"%s\" seems to be in %s", heading, unit.equals("share") ? "shares of 1" : unit);
      if (unit.equals("share") && heading.contains("%")) {
        shareOrPercent(column, heading);
      }
    } else if (column == RecordColumn.STORAGE_TEMP_C
        && values.all(NUMBER)
        && values.counts().keySet().stream().allMatch(t -> Double.parseDouble(t) > 30)) {
      sheet
          .ask(
              "every number under \"%s\" is above 30: add \"unit\": \"F\" if it is Fahrenheit",
              heading)
          .choice("Fahrenheit", new JsonPrimitive("F"), "columns", column.columnName(), "unit")
          .choice("Celsius", new JsonObject());
    }
  }

  /** The heading says percent, the numbers say share: they are taken at their word, and asked. */
  private void shareOrPercent(RecordColumn column, String heading) {
    sheet
        .ask(
            "the numbers under \"%s\" are taken for shares (0.5 is half of the grafts); say"
                + " \"unit\": \"percent\" for %s if 0.5 means half a percent",
            heading, column.columnName())
        .choice("shares", new JsonPrimitive("share"), "columns", column.columnName(), "unit")
        .choice("percent", new JsonPrimitive("percent"), "columns", column.columnName(), "unit");
  }

  /** Looks at a column of the user's own, which may hold numbers. */
  void seeOwn(String heading) {
    SheetValues values = sheet.values(heading);
    if (values.mostly(EITHER_SIGN)) {
      see(values);
    }
  }

  private void see(SheetValues values) {
    commas += values.count(COMMA);
    points += values.count(POINT);
  }

  /** A unit other than ours that the heading or the cells name; or empty. */
  private static String unit(RecordColumn column, String heading, SheetValues values) {
    String words = " " + heading.toLowerCase(Locale.ROOT).replaceAll("[^a-z°%\"]+", " ") + " ";
    if (column == RecordColumn.STORAGE_TEMP_C && words.matches(".* (°?f|fahrenheit) .*")) {
      return "F";
    }
    if (column.unit().equals("mm")) {
      return words.matches(".* (in|inch|inches) .*")
          ? "inch"
          : words.matches(".* cm .*") ? "cm" : "";
    }
    if (column != RecordColumn.TAKES) {
      return "";
    }
    if (values.mostly(".*%")) {
      return "percent";
    }
    return values.shares() ? "share" : words.contains("%") ? "percent" : "";
  }

  /** Adds the decimal sign of the sheet, when all its columns have been looked at. */
  void decimal() {
    if (commas > 0 && points <= (1 - NEARLY_ALL) * commas) {
      sheet.rules().addProperty("decimal", ",");
      sheet.because("of numbers with a decimal sign %,d have a comma, %,d a point", commas, points);
    } else if (commas > 0 && points > 0) {
      sheet
          .ask(
              "numbers stand with decimal commas and with points; add \"decimal\" to single"
                  + " columns")
          .choice("commas in all of them", new JsonPrimitive(","), "decimal")
          .choice("points in all of them", new JsonPrimitive("."), "decimal");
    }
  }
}
