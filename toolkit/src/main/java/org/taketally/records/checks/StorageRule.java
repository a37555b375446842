package org.taketally.records.checks;

import static org.taketally.records.columns.RecordColumn.STORAGE_TEMP_C;

import java.util.OptionalDouble;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.columns.Unit;
import org.taketally.records.problems.Plain;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.SheetReader;
import org.taketally.terms.CropProfile;
import org.taketally.terms.CropProfile.Item;

/** Compares storage, days to assessment and batch size with what is usual for the crop. */
final class StorageRule {

  private static final String LOOK =
      "check the record; if it is right, nothing to do: it is used as it is";

  private final String crop;
  private final String coldHarm;
  private final double tempMin;
  private final double tempMax;
  private final double daysBest;
  private final double daysLimit;
  private final double assessEarly;
  private final double batchMax;

  StorageRule(CropProfile profile) {
    crop = profile.crop();
    coldHarm = profile.words(Item.COLD_HARM);
    tempMin = orNoLimit(profile.number(Item.STORAGE_TEMP_MIN), Double.NEGATIVE_INFINITY);
    tempMax = orNoLimit(profile.number(Item.STORAGE_TEMP_MAX), Double.POSITIVE_INFINITY);
    daysBest = orNoLimit(profile.number(Item.STORAGE_DAYS_BEST), Double.POSITIVE_INFINITY);
    daysLimit = orNoLimit(profile.number(Item.STORAGE_DAYS_LIMIT), Double.POSITIVE_INFINITY);
    assessEarly = orNoLimit(profile.number(Item.ASSESS_EARLY), Double.NEGATIVE_INFINITY);
    batchMax = orNoLimit(profile.number(Item.BATCH_GRAFTS_MAX), Double.POSITIVE_INFINITY);
  }

  private static double orNoLimit(OptionalDouble limit, double none) {
    return limit.orElse(none);
  }

  void apply(RecordRow row, SheetReader sheet, RowReport report) {
    temperature(row, sheet, report);
    storageDays(row, sheet, report);
    double waited = row.number(RecordsLayout.place(DerivedColumn.DAYS_TO_ASSESSMENT));
    if (waited < assessEarly && row.assessed()) {
      report.add(
          ProblemKind.ASSESSED_EARLY,
          sheet.heading(RecordColumn.ASSESSED_DATE),
          () ->
              new ProblemText(
                  sheet.typed(RecordColumn.ASSESSED_DATE),
                  "%s days or more after grafting for %s; this is %s"
                      .formatted(Plain.number(assessEarly), crop, days(waited)),
                  LOOK));
    }
    if (row.grafts() > batchMax) {
      report.add(
          ProblemKind.LARGE_BATCH,
          sheet.heading(RecordColumn.GRAFTS),
          () ->
              new ProblemText(
                  Integer.toString(row.grafts()),
                  "up to " + Plain.number(batchMax) + " grafts in one row",
                  "check that it isn't a total; split it by day and grafter if it is"));
    }
  }

  private void storageDays(RecordRow row, SheetReader sheet, RowReport report) {
    double stored = row.number(RecordsLayout.place(DerivedColumn.STORAGE_DAYS));
    if (stored > daysBest) {
      boolean beyond = stored > daysLimit;
      boolean dated = row.has(RecordColumn.BUDWOOD_CUT_DATE);
      report.add(
          beyond ? ProblemKind.STORED_TOO_LONG : ProblemKind.STORED_LONG,
          dated
              ? sheet.heading(RecordColumn.BUDWOOD_CUT_DATE)
              : sheet.heading(RecordsLayout.place(DerivedColumn.STORAGE_DAYS)),
          () ->
              new ProblemText(
                  dated ? sheet.typed(RecordColumn.BUDWOOD_CUT_DATE) : Plain.number(stored),
                  limit(beyond) + "; this is " + days(stored),
                  LOOK));
    }
  }

  private String limit(boolean beyond) {
    return beyond
        ? "up to %s days in storage, the limit for %s".formatted(Plain.number(daysLimit), crop)
        : "up to %s days in storage, as is best for %s".formatted(Plain.number(daysBest), crop);
  }

  private void temperature(RecordRow row, SheetReader sheet, RowReport report) {
    double kept = row.number(STORAGE_TEMP_C);
    if (kept < tempMin) {
      report.add(
          ProblemKind.STORED_TOO_COLD,
          sheet.heading(STORAGE_TEMP_C),
          () ->
              new ProblemText(
                  sheet.typed(STORAGE_TEMP_C),
                  Plain.number(tempMin)
                      + " °C or more for "
                      + crop
                      + " ("
                      + coldHarm
                      + ")"
                      + inCelsius(kept, sheet),
                  LOOK));
    } else if (kept > tempMax) {
      report.add(
          ProblemKind.STORED_TOO_WARM,
          sheet.heading(STORAGE_TEMP_C),
          () ->
              new ProblemText(
                  sheet.typed(STORAGE_TEMP_C),
                  "up to " + Plain.number(tempMax) + " °C for " + crop + inCelsius(kept, sheet),
                  LOOK + fahrenheit(kept, sheet)));
    }
  }

  private static String inCelsius(double kept, SheetReader sheet) {
    return sheet.converts(STORAGE_TEMP_C) ? "; this is %.1f °C".formatted(kept) : "";
  }

  private String fahrenheit(double kept, SheetReader sheet) {
    double celsius = Unit.FAHRENHEIT.toOurs(kept);
    boolean fits = celsius >= tempMin && celsius <= tempMax && !sheet.converts(STORAGE_TEMP_C);
    return fits
        ? "; if it is in Fahrenheit (%.1f °C), say \"unit\": \"F\" in the dictionary"
            .formatted(celsius)
        : "";
  }

  private static String days(double days) {
    return Plain.number(days) + (days == 1 ? " day" : " days");
  }
}
