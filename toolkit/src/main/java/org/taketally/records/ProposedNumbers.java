package org.taketally.records;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.DittoMarks;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.problems.DictionaryEntry;

/** Proposes how the numbers of a sheet are written: decimal sign and units. */
final class ProposedNumbers {

  private static final String NUMBER = "-?\\d+(\\.\\d+)?";
  private static final String EITHER_SIGN = "-?\\d+([.,]\\d+)?";
  private static final String COMMA = "-?\\d+,\\d{1,2}";
  private static final String POINT = "-?\\d+\\.\\d+";
  private static final String WORD = "\\P{N}*\\p{L}\\P{N}*";
  private static final String THOUSANDS = "[1-9]\\d{0,2}([%s]\\d{3})+";
  private static final String OTHER_SIGNS = ". \u00a0\u2009\u202f'’";
  private static final String NONE = "0";
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
    if (column.kind() == ColumnKind.COUNT) {
      thousands(column, heading, values, entry);
    } else {
      see(values);
    }
    if (column == RecordColumn.TAKES) {
      words(heading, values);
    }
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

  /** Counts have no decimals: a sign before three digits sets thousands apart, or is a slip. */
  private void thousands(
      RecordColumn column, String heading, SheetValues values, JsonObject entry) {
    long byComma = values.count(THOUSANDS.formatted(","));
    long byOther = values.count(THOUSANDS.formatted(OTHER_SIGNS));
    commas += values.count(COMMA);
    points += values.count(POINT) - values.count(THOUSANDS.formatted("."));
    if (byComma + byOther == 0) {
      return;
    }
    String example =
        values.counts().keySet().stream()
            .filter(text -> text.matches(THOUSANDS.formatted("," + OTHER_SIGNS)))
            .findFirst()
            .orElseThrow();
    if (byComma > 0 && byOther > 0) {
      sheet.ask(
          "thousands are set apart in several ways under \"%s\" (such as %s); write them without a"
              + " sign",
          heading, example);
      return;
    }
    entry.addProperty("decimal", byComma > 0 ? "." : ",");
    sheet.because(
        "counts under \"%s\" such as %s are taken for thousands; take \"decimal\" out of %s if they"
            + " aren't",
        heading, example, column.columnName());
  }

  /** Asks what words among counts of takes mean. */
  private void words(String heading, SheetValues values) {
    values
        .counts()
        .forEach(
            (text, count) -> {
              if (text.matches(WORD) && !DittoMarks.isDitto(text)) {
                word(heading, text, count);
              }
            });
  }

  private void word(String heading, String text, int count) {
    String takes = RecordColumn.TAKES.columnName();
    boolean none =
        Arrays.stream(text.split("\\P{L}+"))
            .anyMatch(word -> CommonWords.value(takes, word).filter(NONE::equals).isPresent());
    List<String> meant =
        none ? List.of(NONE, CommonWords.ALL_GRAFTS) : List.of(CommonWords.ALL_GRAFTS, NONE);
    OpenQuestion question =
        sheet.ask(
            "\"%s\" stands under \"%s\" %s and may mean %s of the grafts; add %s to takes (or %s if it"
                + " means %s; or list it under \"missing\")",
            text,
            heading,
            OpenQuestion.times(count),
            said(meant.get(0)),
            DictionaryEntry.same(meant.get(0), text),
            DictionaryEntry.same(meant.get(1), text),
            said(meant.get(1)));
    JsonArray list = OpenQuestion.list(List.of(text));
    for (String one : meant) {
      question.choice(said(one) + " of the grafts took", list, "columns", takes, "same", one);
    }
    question.choice("not recorded", list, "columns", takes, "missing");
  }

  private static String said(String meant) {
    return meant.equals(NONE) ? "none" : "all";
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
