package org.taketally.records.rows;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.taketally.records.columns.ColumnRule;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.columns.SizeLimits;
import org.taketally.records.problems.DictionaryEntry;
import org.taketally.records.problems.Plain;
import org.taketally.records.problems.ProblemKind;

/** Reads counts: whole numbers, never a percentage unless the dictionary says so. */
final class CountReader implements FieldReader {

  /** Takes and grafts in one cell: {@code 12 of 15}, {@code 12/15}, {@code 12 von 15}. */
  private static final Pattern OUT_OF =
      Pattern.compile(
          "(\\d{1,6})\\s*(?:of|out of|/|von|aus|de|sur|su|di)\\s*(\\d{1,6})",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern WORD = Pattern.compile("\\P{N}*\\p{L}\\P{N}*");

  private static final String EXPECTED = "a whole number";

  private final ColumnRule rule;
  private final NumberNotation notation;

  CountReader(ColumnRule rule, NumberNotation notation) {
    this.rule = rule;
    this.notation = notation;
  }

  @Override
  public FieldValue read(String text, boolean exact) {
    Matcher share = OUT_OF.matcher(text);
    if (share.matches() && isTakes()) {
      return new FieldValue(
          Integer.parseInt(share.group(2)), Integer.parseInt(share.group(1)), null, null);
    }
    if (text.endsWith("%")) {
      return FieldValue.wrong(
          ProblemKind.PERCENT_FOR_COUNT,
          EXPECTED + " of grafts, not a percentage",
          "write the count, or say \"unit\": \"percent\" for this column in the dictionary");
    }
    OptionalDouble read = exact ? NumberNotation.exact(text) : notation.readCount(text);
    if (read.isEmpty()) {
      return isTakes() && WORD.matcher(text).matches()
          ? FieldValue.wrong(ProblemKind.NOT_A_NUMBER, EXPECTED, meaning(text))
          : notation.refuseCount(text, EXPECTED);
    }
    double value = read.getAsDouble();
    if (value != Math.rint(value)) {
      return FieldValue.wrong(
          ProblemKind.FRACTIONAL_COUNT, EXPECTED + " of grafts", fraction(value));
    }
    if (!(value >= rule.lowest())) {
      return FieldValue.wrong(
          ProblemKind.OUT_OF_RANGE,
          "a whole number of %s or more".formatted(Plain.number(rule.lowest())),
          rule.lowest() > 0
              ? "correct the count; a row without grafts can be taken out"
              : "correct the count");
    }
    double most = Math.min(rule.highest(), SizeLimits.GRAFTS_IN_ROW);
    if (!(value <= most)) {
      return FieldValue.wrong(
          ProblemKind.OUT_OF_RANGE,
          "a whole number up to " + Plain.number(most),
          "correct the count; if there were as many, write them in several rows");
    }
    return FieldValue.number(value);
  }

  private boolean isTakes() {
    return rule.name().equals(RecordColumn.TAKES.columnName());
  }

  /** The entries by which a word reads as a count; one if it is a common word for it. */
  private static String meaning(String word) {
    Map<String, String> all = new LinkedHashMap<>();
    all.put(CommonWords.ALL_GRAFTS, "if it means that all grafts of the row took");
    all.put("0", "if it means none of them");
    CommonWords.value(RecordColumn.TAKES.columnName(), word)
        .ifPresent(meant -> all.keySet().retainAll(Set.of(meant)));
    return "write the number; "
        + all.entrySet().stream()
            .map(one -> one.getValue() + ", say " + DictionaryEntry.same(one.getKey(), word))
            .collect(Collectors.joining("; "))
        + " for takes in the dictionary; if it means \"not recorded\", leave it blank or list it"
        + " under \"missing\" there";
  }

  private static String fraction(double value) {
    return value > 0 && value < 1
        ? "it looks like a share: write the count, or say \"unit\": \"share\" for this column in"
            + " the dictionary"
        : "write the count of grafts, not a mean or a score";
  }
}
