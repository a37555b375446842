package org.taketally.records;

import static org.taketally.records.columns.RecordColumn.ASSESSED_DATE;
import static org.taketally.records.columns.RecordColumn.RECORD;
import static org.taketally.records.columns.RecordColumn.SEASON;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.taketally.records.checks.DateRule;
import org.taketally.records.checks.PassRules;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.SheetRules;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.Headings;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.RowVisitor;
import org.taketally.records.rows.SheetReader;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.Table;

/** Ties assessments to the records they belong to and checks them against these. */
final class AssessmentRules implements PassRules, RowVisitor {

  private static final int NONE = -1;

  private final RecordsLayout layout;
  private final LocalDate today;
  private final Table frame;
  private final IntColumn grafts;
  private final IntColumn takes;
  private final Map<String, List<Integer>> rows = new HashMap<>();
  private final TreeMap<Integer, TreeMap<Integer, Look>> looks = new TreeMap<>();
  private final int alive;

  private record Look(int alive, Place place, String heading) {}

  AssessmentRules(GraftRecords records, RecordsLayout layout, LocalDate today) {
    this.layout = layout;
    this.today = today;
    this.frame = records.frame();
    this.grafts = frame.intColumn(RecordColumn.GRAFTS.columnName());
    this.takes = frame.intColumn(RecordColumn.TAKES.columnName());
    this.alive = layout.place(KnownColumns.ALIVE.name());
    if (!frame.containsColumn(RECORD.columnName())) {
      throw new IllegalArgumentException(
          "assessments belong to records by their label, and these have no column record");
    }
    for (int row = 0; row < frame.rowCount(); row++) {
      rows.computeIfAbsent(text(RECORD, row), name -> new ArrayList<>()).add(row);
    }
  }

  private String text(RecordColumn column, int row) {
    return frame.containsColumn(column.columnName())
        ? frame.column(column.columnName()).getString(row)
        : "";
  }

  @Override
  public void requireColumns(Headings headings, SheetRules sheet) {
    boolean days = headings.has(DerivedColumn.DAYS_TO_ASSESSMENT.columnName());
    headings.require(
        days
            ? List.of(RECORD.columnName(), KnownColumns.ALIVE.name())
            : List.of(RECORD.columnName(), ASSESSED_DATE.columnName(), KnownColumns.ALIVE.name()),
        sheet);
  }

  /** A dictionary speaks of the records too, whose columns these sheets lack. */
  @Override
  public boolean usesAllColumns() {
    return false;
  }

  @Override
  public void begin() {}

  @Override
  public void begin(RecordsLayout theLayout) {}

  @Override
  public void apply(RecordRow row, SheetReader sheet, RowReport report) {
    if (report.hasErrors()) {
      return;
    }
    if (row.text(RECORD) == null || !(row.has(ASSESSED_DATE) || daysGiven(row))) {
      report.add(
          ProblemKind.NEEDED_BLANK,
          sheet.heading(row.text(RECORD) == null ? RECORD : ASSESSED_DATE),
          () -> new ProblemText("", "a label and a date", "fill it in"));
      return;
    }
    int match = match(row, sheet, report);
    if (match != NONE) {
      check(match, row, sheet, report);
    }
  }

  /** The row of the records it belongs to; reports if there is none or more than one. */
  private int match(RecordRow row, SheetReader sheet, RowReport report) {
    String label = row.text(RECORD);
    List<Integer> candidates = rows.getOrDefault(label, List.of());
    if (row.has(SEASON)) {
      String season = layout.track(SEASON).levels().name(row.code(SEASON));
      candidates = candidates.stream().filter(r -> text(SEASON, r).equals(season)).toList();
    }
    if (candidates.size() == 1) {
      return candidates.get(0);
    }
    boolean several = candidates.size() > 1;
    report.add(
        ProblemKind.UNKNOWN_RECORD,
        sheet.heading(RECORD),
        () ->
            new ProblemText(
                label,
                several ? "a label of one season only" : "a record among those kept",
                several
                    ? "add a column season that tells which one is meant"
                    : "correct the label, or repair the record if it was set aside"));
    return NONE;
  }

  /** Whether a count says how many days after grafting it was made. */
  private static boolean daysGiven(RecordRow row) {
    return !Double.isNaN(row.number(RecordsLayout.place(DerivedColumn.DAYS_TO_ASSESSMENT)));
  }

  /** The day of grafting; null where it isn't recorded. */
  private LocalDate grafted(int match) {
    return frame.containsColumn(RecordColumn.GRAFT_DATE.columnName())
        ? frame.dateColumn(RecordColumn.GRAFT_DATE.columnName()).get(match)
        : null;
  }

  /** Day zero of a record: its graft date, or 0 where counts say only how many days after. */
  private long dayZero(int match) {
    LocalDate start = grafted(match);
    return start == null ? 0 : start.toEpochDay();
  }

  private int day(int match, RecordRow row) {
    return row.has(ASSESSED_DATE)
        ? row.code(ASSESSED_DATE)
        : (int) dayZero(match)
            + (int) row.number(RecordsLayout.place(DerivedColumn.DAYS_TO_ASSESSMENT));
  }

  private void check(int match, RecordRow row, SheetReader sheet, RowReport report) {
    int day = day(match, row);
    LocalDate start = grafted(match);
    int count = (int) row.number(alive);
    if (start == null && row.has(ASSESSED_DATE)) {
      add(
          report,
          ProblemKind.NEEDED_BLANK,
          sheet.heading(ASSESSED_DATE),
          day,
          "a record with a graft date",
          "fill in the graft date of the record");
    } else if (start != null && day < start.toEpochDay()) {
      add(
          report,
          ProblemKind.DATES_OUT_OF_ORDER,
          sheet.heading(ASSESSED_DATE),
          day,
          "a day not before the graft, " + start,
          "correct one of them");
    } else if (day > today.toEpochDay()) {
      add(
          report,
          ProblemKind.FUTURE_DATE,
          sheet.heading(ASSESSED_DATE),
          day,
          "a day up to today, " + today,
          "correct the date");
    }
    DateRule.longAgo(row, ASSESSED_DATE, sheet, report);
    if (count > grafts.getInt(match)) {
      report.add(
          ProblemKind.TAKES_ABOVE_GRAFTS,
          sheet.heading(alive),
          () ->
              new ProblemText(
                  Integer.toString(count),
                  "a whole number from 0 to " + grafts.getInt(match) + " (grafts)",
                  "correct the count"));
    }
    if (looks.containsKey(match) && looks.get(match).containsKey(day)) {
      report.add(
          ProblemKind.DUPLICATE_RECORD,
          sheet.heading(RECORD),
          () ->
              new ProblemText(
                  row.text(RECORD),
                  "one count a day; it was read before at " + looks.get(match).get(day).place(),
                  "take out one of the two"));
    }
  }

  private static void add(
      RowReport report, ProblemKind kind, String heading, int day, String expected, String remedy) {
    report.add(kind, heading, () -> new ProblemText(DateRule.day(day), expected, remedy));
  }

  @Override
  public void keep(RecordRow row, SheetReader sheet, RowReport report) {
    int match = match(row, sheet, report);
    looks
        .computeIfAbsent(match, m -> new TreeMap<>())
        .put(
            day(match, row),
            new Look((int) row.number(alive), report.place(), sheet.heading(alive)));
  }

  @Override
  public void row(RecordRow row) {}

  @Override
  public void endSheet(ProblemLog log) {}

  @Override
  public void close(Sheets sheets, String sources, ProblemLog log) {
    looks.forEach(
        (row, days) -> {
          Look before = null;
          for (Look look : days.values()) {
            if (before != null && look.alive() > before.alive()) {
              rising(row, look, before, log);
            }
            before = look;
          }
          disagreeing(row, days, log);
        });
  }

  private void rising(int row, Look look, Look before, ProblemLog log) {
    log.add(
        ProblemKind.ALIVE_AGAIN,
        look.place(),
        look.heading(),
        () ->
            new ProblemText(
                look.alive() + " alive of " + text(RECORD, row),
                "at most " + before.alive() + ", as many as the time before",
                "check both counts; slow starters may have been missed the first time"));
  }

  private void disagreeing(int row, Map<Integer, Look> days, ProblemLog log) {
    if (!frame.containsColumn(ASSESSED_DATE.columnName()) || takes.isMissing(row)) {
      return;
    }
    LocalDate day = frame.dateColumn(ASSESSED_DATE.columnName()).get(row);
    Look look = day == null ? null : days.get((int) day.toEpochDay());
    if (look != null && look.alive() != takes.getInt(row)) {
      log.add(
          ProblemKind.COUNTS_DISAGREE,
          look.place(),
          look.heading(),
          () ->
              new ProblemText(
                  look.alive() + " alive of " + text(RECORD, row),
                  takes.getInt(row) + ", the takes of the record on the same day",
                  "correct one of them"));
    }
  }

  List<Assessments.History> histories() {
    List<Assessments.History> histories = new ArrayList<>();
    looks.forEach(
        (row, days) -> {
          long start = dayZero(row);
          histories.add(
              new Assessments.History(
                  row,
                  text(RECORD, row),
                  grafts.getInt(row),
                  days.keySet().stream().mapToInt(day -> (int) (day - start)).toArray(),
                  days.values().stream().mapToInt(Look::alive).toArray()));
        });
    return histories;
  }
}
