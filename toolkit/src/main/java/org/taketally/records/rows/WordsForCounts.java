package org.taketally.records.rows;

import java.util.Map;
import org.taketally.records.columns.CommonWords;

/** Reads counts, and words for them where the dictionary says what they mean. */
final class WordsForCounts implements FieldReader {

  private final Map<String, String> same;
  private final FieldReader counts;

  /**
   * A reader.
   *
   * @param same word in the sheet to the count meant, or {@link CommonWords#ALL_GRAFTS}
   */
  WordsForCounts(Map<String, String> same, FieldReader counts) {
    this.same = same;
    this.counts = counts;
  }

  @Override
  public FieldValue read(String text, boolean exact) {
    String meant = same.get(text);
    if (meant == null) {
      return counts.read(text, exact);
    }
    return meant.equals(CommonWords.ALL_GRAFTS)
        ? FieldValue.number(RecordRow.ALL_GRAFTS)
        : counts.read(meant, true);
  }
}
