package org.taketally.records.checks;

import static org.taketally.records.columns.RecordColumn.ASSESSED_DATE;
import static org.taketally.records.columns.RecordColumn.BUDWOOD_CUT_DATE;
import static org.taketally.records.columns.RecordColumn.GRAFT_DATE;
import static org.taketally.records.columns.RecordColumn.SEASON;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.Set;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.ColumnTrack;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.SheetReader;

/** Checks that dates are past and in order, and takes the season from the graft date. */
public final class DateRule {

  private static final int LAST_TWO = 100;
  private static final RecordColumn[] DAYS = {BUDWOOD_CUT_DATE, GRAFT_DATE, ASSESSED_DATE};
  private static final LocalDate LONG_AGO = LocalDate.of(1970, 1, 1);

  private final RecordsLayout layout;
  private final LocalDate today;
  private final Set<String> noted = new HashSet<>();
  private String fromDate;
  private int agreedDay = RecordRow.MISSING;
  private int agreedSeason;

  DateRule(RecordsLayout layout, LocalDate today) {
    this.layout = layout;
    this.today = today;
  }

  void apply(RecordRow row, SheetReader sheet, RowReport report) {
    int graft = row.code(GRAFT_DATE);
    int cut = row.code(BUDWOOD_CUT_DATE);
    int assessed = row.code(ASSESSED_DATE);
    if (isLater(cut, graft)) {
      report.add(
          ProblemKind.DATES_OUT_OF_ORDER,
          sheet.heading(BUDWOOD_CUT_DATE),
          () ->
              new ProblemText(
                  sheet.typed(BUDWOOD_CUT_DATE),
                  "a day not after the graft, " + day(graft),
                  "correct one of them"));
    }
    if (isLater(graft, assessed)) {
      report.add(
          ProblemKind.DATES_OUT_OF_ORDER,
          sheet.heading(ASSESSED_DATE),
          () ->
              new ProblemText(
                  sheet.typed(ASSESSED_DATE),
                  "a day not before the graft, " + day(graft),
                  "correct one of them"));
    }
    past(row, BUDWOOD_CUT_DATE, sheet, report);
    past(row, ASSESSED_DATE, sheet, report);
    if (isLater(graft, (int) today.toEpochDay()) && !row.assessed()) {
      report.add(
          ProblemKind.PLANNED,
          sheet.heading(GRAFT_DATE),
          () ->
              new ProblemText(
                  sheet.typed(GRAFT_DATE),
                  "a day up to today, " + today,
                  "if it is planned, nothing to do"));
    } else {
      past(row, GRAFT_DATE, sheet, report);
    }
    for (RecordColumn column : DAYS) {
      longAgo(row, column, sheet, report);
    }
    season(row, sheet, report);
  }

  private void past(RecordRow row, RecordColumn column, SheetReader sheet, RowReport report) {
    int day = row.code(column);
    if (isLater(day, (int) today.toEpochDay())) {
      report.add(
          ProblemKind.FUTURE_DATE,
          sheet.heading(column),
          () ->
              new ProblemText(
                  sheet.typed(column), "a day up to today, " + today, "correct the date"));
    }
  }

  /** Asks about a day so long ago that its year is more often a slip. */
  public static void longAgo(
      RecordRow row, RecordColumn column, SheetReader sheet, RowReport report) {
    if (row.has(column) && row.code(column) < LONG_AGO.toEpochDay()) {
      report.add(
          ProblemKind.LONG_AGO,
          sheet.heading(column),
          () ->
              new ProblemText(
                  sheet.typed(column),
                  "a year from %d on".formatted(LONG_AGO.getYear()),
                  "check the year; if it is right, nothing to do: it is used as it is"));
    }
  }

  private void season(RecordRow row, SheetReader sheet, RowReport report) {
    fromDate = null;
    int graft = row.code(GRAFT_DATE);
    if (graft == RecordRow.MISSING) {
      return;
    }
    ColumnTrack track = layout.track(SEASON);
    int code = row.code(SEASON);
    if (code == RecordRow.MISSING) {
      String name = seasonOf(graft, sheet.rules().seasonStart());
      row.setCode(RecordsLayout.place(SEASON), track.levels().code(name));
      fromDate = name;
      return;
    }
    if (graft == agreedDay && code == agreedSeason) {
      return;
    }
    String name = track.levels().name(code);
    int year = yearOf(name);
    agreedDay = graft;
    agreedSeason = code;
    if (year > 0 && Math.abs(LocalDate.ofEpochDay(graft).getYear() - year) > 1) {
      agreedDay = RecordRow.MISSING;
      report.add(
          ProblemKind.SEASON_AND_DATE,
          sheet.heading(SEASON),
          () ->
              new ProblemText(
                  name,
                  "a season in or near the graft date, " + sheet.typed(GRAFT_DATE),
                  "correct one of them"));
    }
  }

  /** Says once for each file and season that seasons were taken from dates. */
  void keep(SheetReader sheet, RowReport report) {
    String name = fromDate;
    if (name != null && noted.add(report.place().file() + '\n' + name)) {
      report.add(
          ProblemKind.SEASON_FROM_DATE,
          sheet.heading(GRAFT_DATE),
          () ->
              new ProblemText(
                  sheet.typed(GRAFT_DATE),
                  "",
                  "this and others like it are taken as season " + name));
    }
  }

  private static int yearOf(String season) {
    int year = 0;
    for (int i = 0; i < season.length(); i++) {
      int digit = season.charAt(i) - '0';
      if (season.length() != 4 || digit < 0 || digit > 9) {
        return 0;
      }
      year = 10 * year + digit;
    }
    return year;
  }

  /** The year, or, where seasons begin in another month than January, both years: 2023-24. */
  static String seasonOf(int day, int startMonth) {
    LocalDate date = LocalDate.ofEpochDay(day);
    if (startMonth == 1) {
      return Integer.toString(date.getYear());
    }
    int year = date.getMonthValue() < startMonth ? date.getYear() - 1 : date.getYear();
    return "%d-%02d".formatted(year, (year + 1) % LAST_TWO);
  }

  private static boolean isLater(int day, int other) {
    return day != RecordRow.MISSING && other != RecordRow.MISSING && day > other;
  }

  public static String day(int epochDay) {
    return LocalDate.ofEpochDay(epochDay).toString();
  }
}
