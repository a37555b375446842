package org.taketally.records.checks;

import java.time.LocalDate;
import java.util.List;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.SheetRules;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.Places;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.Headings;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.SheetReader;
import org.taketally.terms.CropProfile;

/** All rules for rows, in the order in which they are applied. */
public final class RowRules implements PassRules {

  private final RecordsLayout layout;
  private final CropProfile crop;
  private final ResultRule results;
  private final TotalRows totals;
  private final BlankResults blanks;
  private final DateRule dates;
  private final Derivation derivation;
  private final StorageRule storage;
  private final RecordIds ids;
  private final SameBatch sameBatch;
  private final PercentSuspicion percents = new PercentSuspicion();
  private final SummaryRows summaries = new SummaryRows();
  private final OddTakes evidence;
  private final AssessmentDays assessmentDays;

  /**
   * What the rules need to know.
   *
   * @param crop what is usual for the crop; null if not said
   * @param today the day no record can be later than
   */
  public record Options(CropProfile crop, LocalDate today) {}

  public RowRules(Options options, RecordsLayout layout, Places places) {
    this.layout = layout;
    this.crop = options.crop();
    this.results = new ResultRule(layout, options.today());
    this.totals = new TotalRows(layout);
    this.blanks = new BlankResults(options.today().toEpochDay());
    this.dates = new DateRule(layout, options.today());
    this.derivation = new Derivation(layout);
    this.storage = crop == null ? null : new StorageRule(crop);
    this.ids = new RecordIds(layout, places);
    this.sameBatch = new SameBatch(places);
    this.evidence = new OddTakes(layout);
    this.assessmentDays = new AssessmentDays();
  }

  @Override
  public void requireColumns(Headings headings, SheetRules sheet) {
    headings.require(
        List.of(
            RecordColumn.CULTIVAR.columnName(),
            RecordColumn.ROOTSTOCK.columnName(),
            RecordColumn.TAKES.columnName() + "|" + RecordColumn.OUTCOME.columnName()),
        sheet);
  }

  @Override
  public void begin() {
    derivation.markPresent();
  }

  @Override
  public void apply(RecordRow row, SheetReader sheet, RowReport report) {
    results.apply(row, sheet, report);
    totals.apply(row, sheet, report);
    LivingAndDead.apply(row, sheet, report);
    percents.see(row, sheet, report);
    dates.apply(row, sheet, report);
    derivation.apply(row, sheet, report);
    if (storage != null) {
      storage.apply(row, sheet, report);
    }
    if (!report.hasErrors()) {
      ids.check(row, sheet, report);
    }
  }

  @Override
  public void keep(RecordRow row, SheetReader sheet, RowReport report) {
    dates.keep(sheet, report);
    ids.keep(row, sheet, report.place());
    sameBatch.keep(row, sheet, report);
    summaries.add(row, sheet, report);
    blanks.add(row, sheet, report);
    evidence.add(row);
    assessmentDays.add(row);
  }

  @Override
  public void endSheet(ProblemLog log) {
    totals.endSheet();
    blanks.close(log);
    summaries.close(log);
    percents.close(log);
  }

  @Override
  public void close(Sheets sheets, String sources, ProblemLog log) {
    if (crop == null) {
      log.add(
          ProblemKind.NO_CROP,
          Place.whole(sources.contains(", ") ? "all files" : sources),
          "",
          () ->
              new ProblemText(
                  "no crop named",
                  "",
                  "limits that differ between crops (storage, days to the count, grafts in a row,"
                      + " take) weren't checked"));
    }
    ids.close(layout.track(RecordColumn.SEASON).levels().size(), log);
    new NameChecks(layout, sheets, log).run();
    evidence.close(sources, crop, log);
    assessmentDays.close(sources, crop, log);
  }
}
