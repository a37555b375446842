package org.taketally.records.rows;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.taketally.records.columns.ColumnRule;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.DittoMarks;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.columns.TotalWords;
import org.taketally.records.problems.DictionaryEntry;
import org.taketally.records.problems.Finding;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.sources.Trim;

/** Reads names: the spelling the dictionary prefers, or one of a closed list. */
final class NameReader implements FieldReader {

  private static final Set<String> OFTEN_MISSING =
      Set.of("na", "n/a", "n.a.", "null", "nil", "nan", "-", "--", "?", "??", ".", "x", "missing");
  static final FieldValue TOTAL =
      FieldValue.wrong(
          ProblemKind.SUMMARY_ROW,
          "one graft or batch in each row",
          "take rows of totals and means out of the sheet");

  static final FieldValue DITTO =
      FieldValue.wrong(
          ProblemKind.DITTO_MARK,
          "the name itself, not a mark for the one above",
          "write the name out, or name its heading under \"fill_down\" in the dictionary: blanks"
              + " and marks there then mean the same as above");

  static final FieldValue DITTO_DAY =
      FieldValue.wrong(
          ProblemKind.DITTO_MARK,
          "the day itself, not a mark for the one above",
          "write the day out, or name its heading under \"fill_down\" in the dictionary: blanks"
              + " and marks there then mean the same as above");

  private final ColumnRule rule;
  private final Map<String, String> same;
  private final Levels levels;

  NameReader(ColumnRule rule, Map<String, String> same, Levels levels) {
    this.rule = rule;
    this.same = same;
    this.levels = levels;
  }

  @Override
  public FieldValue read(String typed, boolean exact) {
    String text = same.containsKey(typed) ? typed : Trim.singleSpaced(typed);
    if (isDitto(text, same)) {
      return DITTO;
    }
    String name = same.getOrDefault(text, text);
    if (rule.closed()) {
      return fromList(name);
    }
    if (TotalWords.isTotal(name) && !same.containsKey(text)) {
      return TOTAL;
    }
    FieldValue value = FieldValue.code(levels.code(name));
    return OFTEN_MISSING.contains(name.toLowerCase(java.util.Locale.ROOT))
        ? value.with(
            new Finding(
                ProblemKind.LOOKS_MISSING,
                "a name; it was read as one",
                "if it means \"not recorded\", say \"missing\": [\""
                    + name
                    + "\"] in the dictionary"))
        : value;
  }

  /** Whether a text stands for the name above it, if the dictionary doesn't say what it means. */
  static boolean isDitto(String text, Map<String, String> same) {
    return DittoMarks.isDitto(text) && !same.containsKey(text);
  }

  private FieldValue fromList(String name) {
    if (rule.allowed().contains(name)) {
      return FieldValue.code(levels.code(name));
    }
    String plain = NameLikeness.plain(name);
    for (String allowed : rule.allowed()) {
      if (NameLikeness.plain(allowed).equals(plain)) {
        return FieldValue.code(levels.code(allowed))
            .with(new Finding(ProblemKind.RESPELLED, "\"" + allowed + "\"", "read as that"));
      }
    }
    return FieldValue.wrong(
        ProblemKind.NOT_ALLOWED, "one of " + String.join(", ", rule.allowed()), remedy(name));
  }

  /** A result may be denied in the letters of its word: "not taken", "untaken", "taken, died". */
  private boolean isResult() {
    return rule.name().equals(RecordColumn.OUTCOME.columnName());
  }

  /** The entry to write: by the common meaning of the word, else by its letters, else by choice. */
  private String remedy(String name) {
    List<String> allowed = rule.allowed();
    String said = "correct it, or say what it means in the dictionary: ";
    Optional<String> common = CommonWords.value(rule.name(), name);
    Optional<String> meant =
        isResult() ? common : common.or(() -> NameLikeness.nearest(name, allowed));
    if (meant.isPresent()) {
      return said + DictionaryEntry.same(meant.get(), name);
    }
    return said
        + allowed.stream()
            .map(one -> DictionaryEntry.same(one, name))
            .collect(Collectors.joining(" or "));
  }
}
