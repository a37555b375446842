package org.taketally.records.checks;

import static org.taketally.records.columns.RecordColumn.FAILURE_CAUSE;
import static org.taketally.records.columns.RecordColumn.GRAFTS;
import static org.taketally.records.columns.RecordColumn.GRAFT_DATE;
import static org.taketally.records.columns.RecordColumn.OUTCOME;
import static org.taketally.records.columns.RecordColumn.TAKES;

import java.time.LocalDate;
import java.util.Optional;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.BlankResult;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.ProblemText;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.SheetReader;
import org.taketally.records.rows.SheetSurvey;
import org.taketally.terms.Plural;

/** Makes grafts and takes of a row from {@code grafts}, {@code takes} and {@code outcome}. */
final class ResultRule {

  private static final String LOST_LABEL = "lostlabel";
  private static final String LABEL_LOST = "labellost";

  private final RecordsLayout layout;
  private final LocalDate today;

  ResultRule(RecordsLayout layout, LocalDate today) {
    this.layout = layout;
    this.today = today;
  }

  void apply(RecordRow row, SheetReader sheet, RowReport report) {
    for (RecordColumn column : new RecordColumn[] {GRAFTS, TAKES, OUTCOME}) {
      if (report.failed(sheet.heading(column))) {
        return;
      }
    }
    double made = row.number(GRAFTS);
    int outOf = row.code(TAKES);
    if (outOf != RecordRow.MISSING && !Double.isNaN(made) && made != outOf) {
      report.add(
          ProblemKind.CONTRADICTION,
          sheet.heading(TAKES),
          () ->
              new ProblemText(
                  sheet.typed(TAKES), "as many grafts as " + (int) made, "correct one of them"));
      return;
    }
    int grafts = outOf != RecordRow.MISSING ? outOf : Double.isNaN(made) ? 1 : (int) made;
    String outcome = name(row, OUTCOME);
    boolean unknown = outOf == RecordRow.MISSING && Double.isNaN(made) && outcome.isEmpty();
    if (unknown && sheet.countsGrafts()) {
      blankGrafts(sheet, report);
      return;
    }
    double given = row.number(TAKES);
    boolean alone = outOf == RecordRow.MISSING && Double.isNaN(made) && !sheet.reads(GRAFTS);
    boolean all = given == RecordRow.ALL_GRAFTS;
    if (all && Double.isNaN(made) && sheet.reads(GRAFTS)) {
      blankGrafts(sheet, report);
      return;
    }
    boolean batch = all || (sheet.counts() && !sheet.converts(TAKES));
    if (!Double.isNaN(given) && alone && batch) {
      withoutGrafts(sheet, report);
      return;
    }
    if (!Double.isNaN(given)) {
      if (given == 1
          && outOf == RecordRow.MISSING
          && grafts > 1
          && inDoubt(grafts, sheet, report)) {
        return;
      }
      int takes = takes(given, grafts, sheet, report);
      counted(row, new int[] {grafts, takes}, outcome, new Here(sheet, report));
    } else {
      uncounted(row, grafts, outcome, new Here(sheet, report));
    }
    cause(row, outcome, new Here(sheet, report));
  }

  private static int takes(double given, int grafts, SheetReader sheet, RowReport report) {
    if (given == RecordRow.ALL_GRAFTS) {
      return grafts;
    }
    return sheet.converts(TAKES) ? fromPercent(given, grafts, sheet, report) : (int) given;
  }

  /** In a sheet that counts takes and never says out of how many, a 1 is no graft that took. */
  private static void withoutGrafts(SheetReader sheet, RowReport report) {
    report.add(
        ProblemKind.TAKES_ABOVE_GRAFTS,
        sheet.heading(TAKES),
        () ->
            new ProblemText(
                sheet.typed(TAKES),
                "how many grafts it is out of: this sheet counts takes and has no column of grafts",
                "name the column that holds them, e.g. \"grafts\": \"made\" under \"columns\" in"
                    + " the dictionary; where every row has as many, say \"constants\": {\"grafts\":"
                    + " \"their number\"}; where the dead were counted, name their column: \"takes\":"
                    + " {\"from\": \"%s\", \"dead\": \"its heading\"}"
                        .formatted(sheet.heading(TAKES))));
  }

  /** Beside batches a blank isn't one graft, nor told from a batch by how many of it took. */
  private static void blankGrafts(SheetReader sheet, RowReport report) {
    String others =
        sheet
            .batch()
            .map(
                one ->
                    ": other rows have more than one (\"%s\" on line %d)"
                        .formatted(one.text(), one.line()))
            .orElse("");
    report.add(
        ProblemKind.NEEDED_BLANK,
        sheet.heading(GRAFTS),
        () ->
            new ProblemText(
                sheet.typed(GRAFTS),
                "how many grafts were made" + others,
                "fill it in; write 1 for a single graft"));
  }

  /** Whether a 1 may as well be a share: all of the grafts. */
  private static boolean inDoubt(int grafts, SheetReader sheet, RowReport report) {
    if (sheet.converts(TAKES)) {
      return false;
    }
    String typed = sheet.typed(TAKES);
    Optional<SheetSurvey.Example> share = sheet.share();
    if (share.isEmpty() && (sheet.counts() || !typed.matches("1[.,]0+"))) {
      return false;
    }
    String why =
        share
            .map(one -> ", because \"%s\" on line %d is a share".formatted(one.text(), one.line()))
            .orElse("");
    report.add(
        ProblemKind.AMBIGUOUS_NUMBER,
        sheet.heading(TAKES),
        () ->
            new ProblemText(
                typed,
                "a count that reads one way only; this could be 1 of %d or all %d%s"
                    .formatted(grafts, grafts, why),
                "write the count, or say \"unit\": \"share\" for this column in the dictionary"));
    return true;
  }

  private record Here(SheetReader sheet, RowReport report) {
    void add(ProblemKind kind, RecordColumn column, ProblemText words) {
      report.add(kind, sheet.heading(column), () -> words);
    }
  }

  private void counted(RecordRow row, int[] result, String outcome, Here here) {
    int grafts = result[0];
    int takes = result[1];
    if (takes > grafts) {
      here.add(
          ProblemKind.TAKES_ABOVE_GRAFTS,
          TAKES,
          new ProblemText(
              here.sheet().typed(TAKES),
              "a whole number from 0 to " + grafts + " (grafts)",
              "correct takes or grafts"));
      return;
    }
    boolean agrees =
        switch (outcome) {
          case "taken" -> takes == grafts;
          case "failed" -> takes == 0;
          case "unassessed" -> false;
          default -> true;
        };
    if (!agrees) {
      here.add(
          ProblemKind.CONTRADICTION,
          OUTCOME,
          new ProblemText(
              outcome,
              "the same as takes, " + takes + " of " + grafts,
              "decide which is right and leave the other blank"));
      return;
    }
    row.setResult(grafts, takes);
  }

  private void uncounted(RecordRow row, int grafts, String outcome, Here here) {
    if (outcome.equals("unassessed")) {
      row.setUnassessed(grafts);
      here.add(
          ProblemKind.UNASSESSED,
          OUTCOME,
          new ProblemText(outcome, "", "kept, but counted neither as taken nor as failed"));
    } else if (outcome.isEmpty()) {
      blank(row, grafts, here);
    } else if (grafts > 1) {
      here.add(
          ProblemKind.CONTRADICTION,
          OUTCOME,
          new ProblemText(
              outcome,
              "takes for a batch of " + grafts + " grafts",
              "write how many took under takes"));
    } else {
      row.setResult(1, outcome.equals("taken") ? 1 : 0);
    }
  }

  /** A result that isn't there: what that means, the dictionary says. */
  private void blank(RecordRow row, int grafts, Here here) {
    RecordColumn column = here.sheet().reads(TAKES) ? TAKES : OUTCOME;
    boolean planned = row.has(GRAFT_DATE) && row.code(GRAFT_DATE) > today.toEpochDay();
    Optional<BlankResult> said = here.sheet().rules().blankResult();
    boolean meant = BlankResults.isBlank(here.sheet()) && !planned;
    if (meant && said.isPresent() && said.get() != BlankResult.UNASSESSED) {
      boolean took = said.get() == BlankResult.TAKEN;
      row.setResult(grafts, took ? grafts : 0);
      here.add(
          took ? ProblemKind.BLANK_AS_TAKEN : ProblemKind.BLANK_AS_FAILED,
          column,
          new ProblemText(
              "",
              "",
              "read as %s, as the dictionary says of blank results"
                  .formatted(took ? "taken" : "failed")));
      return;
    }
    row.setUnassessed(grafts);
    if (BlankResults.asks(here.sheet())) {
      here.add(
          ProblemKind.NO_RESULT,
          column,
          new ProblemText(
              "", "a result", "counted as unassessed, not as failed; fill it in if it is known"));
    } else {
      here.add(
          ProblemKind.UNASSESSED,
          column,
          new ProblemText(
              here.sheet().typed(column), "", "kept, but counted neither as taken nor as failed"));
    }
  }

  private void cause(RecordRow row, String outcome, Here here) {
    String cause = name(row, FAILURE_CAUSE);
    if (cause.isEmpty()) {
      return;
    }
    String plain = NameLikeness.plain(cause);
    if (outcome.equals("failed") && (plain.equals(LOST_LABEL) || plain.equals(LABEL_LOST))) {
      here.add(
          ProblemKind.CONTRADICTION,
          FAILURE_CAUSE,
          new ProblemText(
              cause,
              "a cause seen on the graft: without its label no one knows that it failed",
              "write unassessed as its outcome"));
    } else if (outcome.equals("taken")) {
      here.add(
          ProblemKind.CAUSE_OF_TAKE,
          FAILURE_CAUSE,
          new ProblemText(
              cause,
              "no cause of failure beside a take",
              "if it failed later, say so in a file of assessments; else clear one of the two"));
    }
  }

  /** The only count that rounds to a percentage of so many grafts; reports if none or many do. */
  private static int fromPercent(double percent, int grafts, SheetReader sheet, RowReport report) {
    double half = 0.5 * resolution(percent) + 1e-9;
    int low = (int) Math.ceil((percent - half) * grafts / 100);
    int high = (int) Math.floor((percent + half) * grafts / 100);
    boolean column = sheet.reads(GRAFTS);
    boolean unknown = !column && !sheet.rules().constants().containsKey(GRAFTS.columnName());
    if (low == high && !unknown) {
      return low;
    }
    String typed = sheet.typed(TAKES);
    ProblemText words =
        unknown || (column && grafts == 1 && sheet.blank(GRAFTS))
            ? withoutNumber(typed, unknown)
            : new ProblemText(typed, oneCount(grafts, low, high), "write the count instead");
    report.add(ProblemKind.PERCENT_FOR_COUNT, sheet.heading(TAKES), () -> words);
    return 0;
  }

  private static String oneCount(int grafts, int low, int high) {
    return low > high
        ? "a percentage that %s can give".formatted(Plural.of(grafts, "graft"))
        : "a percentage that stands for one count; of %d grafts this could be %d to %d"
            .formatted(grafts, low, high);
  }

  /** A percentage of grafts whose number stands neither in the row nor, perhaps, in the sheet. */
  private static ProblemText withoutNumber(String typed, boolean sheet) {
    return new ProblemText(
        typed,
        sheet
            ? "how many grafts it is out of: this sheet has no column of grafts"
            : "how many grafts it is out of: the number of grafts is blank",
        sheet
            ? "name the column that holds them, e.g. \"grafts\": \"made\" under \"columns\" in the"
                + " dictionary; where each row is one graft, say \"constants\": {\"grafts\": \"1\"}"
            : "fill it in");
  }

  /** 1, 0.1, 0.01 ...: the last decimal place in which a percentage was given. */
  private static double resolution(double percent) {
    double step = 1;
    while (step > 1e-6 && Math.abs(percent / step - Math.rint(percent / step)) > 1e-6) {
      step /= 10;
    }
    return step;
  }

  private String name(RecordRow row, RecordColumn column) {
    int code = row.code(column);
    return code == RecordRow.MISSING ? "" : layout.track(column).levels().name(code);
  }
}
