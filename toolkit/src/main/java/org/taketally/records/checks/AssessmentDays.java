package org.taketally.records.checks;

import java.util.OptionalDouble;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.terms.CropProfile;
import org.taketally.terms.CropProfile.Item;

/** Notices early and final counts mixed in one column: they are different numbers. */
final class AssessmentDays {

  private static final double A_TENTH = 0.1;
  private static final int FEW = 3;
  private static final int LONGEST = 1000;

  private final long[] rows = new long[LONGEST + 1];
  private long all;

  void add(RecordRow row) {
    double days = row.number(RecordsLayout.place(DerivedColumn.DAYS_TO_ASSESSMENT));
    if (row.assessed() && !Double.isNaN(days)) {
      rows[(int) Math.min(days, LONGEST)]++;
      all++;
    }
  }

  void close(String sources, CropProfile crop, ProblemLog log) {
    OptionalDouble early = crop == null ? OptionalDouble.empty() : crop.number(Item.ASSESS_EARLY);
    OptionalDouble last = crop == null ? OptionalDouble.empty() : crop.number(Item.ASSESS_FINAL);
    if (early.isEmpty() || last.isEmpty() || all == 0) {
      return;
    }
    int between = (int) ((early.getAsDouble() + last.getAsDouble()) / 2);
    long before = count(0, between);
    long after = count((int) last.getAsDouble(), LONGEST);
    if (Math.min(before, after) >= Math.max(FEW, A_TENTH * all)) {
      log.add(
          ProblemKind.MIXED_ASSESSMENT,
          Place.whole(sources),
          RecordColumn.ASSESSED_DATE.columnName(),
          () ->
              new ProblemText(
                  "%,d rows assessed within %d days and %,d after %.0f days or later"
                      .formatted(before, between, after, last.getAsDouble()),
                  "takes counted at about the same age",
                  "analyse early and final counts apart, or give all counts in a file of"
                      + " assessments"));
    }
  }

  private long count(int from, int to) {
    long sum = 0;
    for (int day = from; day <= Math.min(to, LONGEST); day++) {
      sum += rows[day];
    }
    return sum;
  }
}
