package org.taketally.records;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.sources.RowSource;

/**
 * What is proposed for one sheet: which heading holds which column of ours, the rules of the
 * dictionary, what they rest on, and what is open.
 */
final class ProposedSheet {

  private final RowSource source;
  private final JsonObject rules;
  private final Map<String, String> headings;
  private final List<String> reasons = new ArrayList<>();
  private final List<OpenQuestion> questions = new ArrayList<>();
  private boolean cutShort;

  /**
   * A sheet of which nothing is proposed yet.
   *
   * @param rules to be filled
   * @param headings our column to its heading, to be filled
   */
  ProposedSheet(RowSource source, JsonObject rules, Map<String, String> headings) {
    this.source = source;
    this.rules = rules;
    this.headings = headings;
  }

  String name() {
    return source.name();
  }

  RowSource source() {
    return source;
  }

  JsonObject rules() {
    return rules;
  }

  /** Our column to the heading that seems to hold it. */
  Map<String, String> headings() {
    return headings;
  }

  /** Whether a cultivar or a rootstock stands in its rows, or may stand in its headings. */
  boolean holdsNames() {
    return headings.containsKey(RecordColumn.CULTIVAR.columnName())
        || headings.containsKey(RecordColumn.ROOTSTOCK.columnName())
        || rules.has("wide")
        || questions.stream().anyMatch(question -> question.text().contains("\"wide\""));
  }

  SheetValues values(String heading) {
    return values(Set.of(heading));
  }

  SheetValues values(Set<String> together) {
    SheetValues values = SheetValues.of(source, together);
    if (values.more() && !cutShort) {
      cutShort = true;
      because(
          "only its first %,d rows were looked at; \"taketally check\" reads all",
          SheetValues.ROWS);
    }
    return values;
  }

  /** Says what an entry rests on. */
  void because(String format, Object... parts) {
    reasons.add(String.format(Locale.ROOT, format, parts));
  }

  /** Adds a question whose choices follow. */
  OpenQuestion ask(String format, Object... parts) {
    OpenQuestion question =
        new OpenQuestion(name(), String.format(Locale.ROOT, format, parts), rules);
    questions.add(question);
    return question;
  }

  List<String> reasons() {
    return reasons;
  }

  List<OpenQuestion> questions() {
    return questions;
  }
}
