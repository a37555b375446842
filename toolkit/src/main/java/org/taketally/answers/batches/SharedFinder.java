package org.taketally.answers.batches;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.GrafterLabels;
import org.taketally.answers.batches.LevelAgainstOthers.Shared;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.cells.Factor;
import org.taketally.records.GraftRecords;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;

/** What grafts of one level have in common that the others have less. */
final class SharedFinder {

  private static final int MOST = 8;

  /** Shares that are worth telling; common practice, no source. */
  private static final double EXCESS = 0.25;

  private static final double HALF = 0.5;

  /** A column of more levels than this share of the rows is a label, not a group. */
  private static final double LABELS = 0.5;

  /** Columns that are labels, results, or made of others. */
  private static final Set<String> NOTHING_SHARED =
      Set.of(
          RecordColumn.RECORD.columnName(),
          DerivedColumn.PAIRING.columnName(),
          RecordColumn.NOTES.columnName(),
          RecordColumn.OUTCOME.columnName(),
          RecordColumn.FAILURE_CAUSE.columnName(),
          RecordColumn.REPLACES.columnName(),
          RecordColumn.ASSESSED_DATE.columnName(),
          RecordColumn.GRAFT_DATE.columnName());

  private SharedFinder() {}

  static List<Shared> of(GraftRecords records, String column, String level, AnswerOptions options) {
    List<String> names =
        records.frame().columnNames().stream()
            .filter(name -> name.equals(column) || !NOTHING_SHARED.contains(name))
            .toList();
    Cells cells = CellsOf.records(records, names);
    Factor own =
        cells.findFactor(column).or(() -> cells.findMeasure(column).map(Factor::of)).orElseThrow();
    List<Shared> shared = new ArrayList<>();
    for (Factor other : cells.factors()) {
      if (!other.name().equals(column) && other.size() <= LABELS * cells.size()) {
        shared(cells, own.indexOf(level), own, other, options).ifPresent(shared::add);
      }
    }
    return shared.stream()
        .sorted(
            Comparator.comparingDouble(
                (Shared s) -> -Math.max(s.alone(), s.here() - s.elsewhere())))
        .limit(MOST)
        .toList();
  }

  private static Optional<Shared> shared(
      Cells cells, int one, Factor own, Factor other, AnswerOptions options) {
    double[] here = new double[other.size()];
    double[] elsewhere = new double[other.size()];
    double graftsHere = 0;
    double graftsElsewhere = 0;
    for (int i = 0; i < cells.size(); i++) {
      int code = other.code(i);
      if (own.code(i) == Factor.MISSING || code == Factor.MISSING) {
        continue;
      }
      int grafts = cells.grafts(i);
      if (own.code(i) == one) {
        here[code] += grafts;
        graftsHere += grafts;
      } else {
        elsewhere[code] += grafts;
        graftsElsewhere += grafts;
      }
    }
    if (graftsHere == 0 || graftsElsewhere == 0) {
      return Optional.empty();
    }
    int commonest = 0;
    double alone = 0;
    for (int k = 0; k < here.length; k++) {
      commonest = here[k] > here[commonest] ? k : commonest;
      alone += elsewhere[k] == 0 ? here[k] / graftsHere : 0;
    }
    double share = here[commonest] / graftsHere;
    double others = elsewhere[commonest] / graftsElsewhere;
    boolean telling = alone >= HALF || (share >= HALF && share - others >= EXCESS);
    String name = GrafterLabels.shown(other, options).get(commonest);
    return telling
        ? Optional.of(new Shared(other.name(), name, share, others, alone))
        : Optional.empty();
  }
}
