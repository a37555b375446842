package org.taketally.records.rows;

import java.util.Map;
import java.util.Optional;
import org.taketally.records.columns.ColumnRule;
import org.taketally.records.columns.DittoMarks;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.columns.TotalWords;
import org.taketally.records.columns.Unit;
import org.taketally.records.dictionary.ColumnEntry;
import org.taketally.records.dictionary.SheetRules;

/** Chooses how the fields of a column are read, by its kind and the rules of the sheet. */
final class FieldReaders {

  private final SheetRules rules;
  private final boolean semicolons;
  private final SheetSurvey survey;

  FieldReaders(SheetRules rules, boolean semicolons, SheetSurvey survey) {
    this.rules = rules;
    this.semicolons = semicolons;
    this.survey = survey;
  }

  FieldReader reader(ColumnTrack track) {
    String name = track.name();
    ColumnEntry entry = rules.column(name);
    NumberNotation notation = new NumberNotation(rules.decimal(name), semicolons);
    if (track.own()) {
      return new OtherReader(
          track, entry.same(), entry.levels() || rules.batches().contains(name), notation);
    }
    ColumnRule rule = KnownColumns.rule(name);
    Optional<Unit> unit = entry.unit().flatMap(u -> Unit.of(rule, u));
    return switch (track.kind()) {
      case TEXT ->
          name.equals(RecordColumn.RECORD.columnName())
              ? FieldReaders::label
              : FieldReader::freeText;
      case LEVELS -> new NameReader(rule, entry.same(), track.levels());
      case NUMBER -> new AmountReader(rule, notation, unit);
      case COUNT ->
          new WordsForCounts(
              entry.same(),
              unit.isPresent()
                  ? new PercentReader(notation, unit.get())
                  : new CountReader(rule, notation));
      case DATE -> {
        DateNotation dates = new DateNotation(rules.dates(name), survey.otherOrder(name));
        yield (text, exact) -> DittoMarks.isDitto(text) ? NameReader.DITTO_DAY : dates.read(text);
      }
    };
  }

  /** The reader for labels: free text, but no word for totals and no ditto mark. */
  private static FieldValue label(String text, boolean exact) {
    if (NameReader.isDitto(text, Map.of())) {
      return NameReader.DITTO;
    }
    return TotalWords.isTotal(text) ? NameReader.TOTAL : FieldValue.text(text);
  }
}
