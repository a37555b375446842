package org.taketally.records.checks;

import static org.taketally.records.columns.RecordColumn.TAKES;

import java.util.Locale;
import java.util.Optional;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.SheetReader;
import org.taketally.terms.Plural;

/** Holds the living and the dead against the grafts, where a sheet counts all three. */
final class LivingAndDead {

  private static final String COUNT = "\\d{1,9}";

  private LivingAndDead() {}

  static void apply(RecordRow row, SheetReader sheet, RowReport report) {
    Optional<String> heading = sheet.deadHeading();
    if (heading.isEmpty() || !row.counted() || !sheet.reads(TAKES) || sheet.typedDead().isEmpty()) {
      return;
    }
    String typed = sheet.typedDead();
    if (!typed.matches(COUNT)) {
      if (sheet.rules().column(TAKES.columnName()).dead().isPresent()) {
        report.addUnread(
            ProblemKind.NOT_A_NUMBER,
            heading.get(),
            () ->
                new ProblemText(
                    typed,
                    "a whole number of dead",
                    "correct it; not held against the grafts until then"));
      }
      return;
    }
    long dead = Long.parseLong(typed);
    long living = row.assessed() ? row.takes() : 0;
    if (row.assessed() ? living + dead != row.grafts() : dead > 0) {
      ProblemText words = words(row, dead);
      report.add(ProblemKind.DEAD_DISAGREE, heading.get(), () -> words);
    }
  }

  private static ProblemText words(RecordRow row, long dead) {
    int grafts = row.grafts();
    if (!row.assessed()) {
      return new ProblemText(
          say("%,d dead of %s, and no count of the living", dead, Plural.of(grafts, "graft")),
          "the living beside the dead",
          "the row counts as unassessed; write how many were alive");
    }
    long neither = grafts - row.takes() - dead;
    String found =
        say("%,d living and %,d dead of %s", row.takes(), dead, Plural.of(grafts, "graft"));
    return neither > 0
        ? new ProblemText(
            found,
            say("living and dead that come to %,d; %,d %s neither", grafts, neither, is(neither)),
            say(
                "what isn't living counts as failed; correct the count that is wrong, or write %,d"
                    + " under grafts if nobody looked at the other %,d",
                grafts - neither, neither))
        : new ProblemText(
            found,
            say(
                "living and dead that come to %,d; %,d %s too many",
                grafts, -neither, is(-neither)),
            say("read as %,d of %,d alive; correct the count that is wrong", row.takes(), grafts));
  }

  private static String is(long count) {
    return count == 1 ? "is" : "are";
  }

  private static String say(String words, Object... values) {
    return String.format(Locale.ROOT, words, values);
  }
}
