package org.taketally.answers.batches;

import java.math.BigDecimal;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.RootstockVerdictCalculator;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.cells.Factor;
import org.taketally.model.TakeModel;
import org.taketally.records.GraftRecords;
import org.taketally.records.columns.RecordColumn;

/**
 * Works out {@link LevelAgainstOthers}: all other levels are put together as one, and the two are
 * judged by the rules of every verdict, with everything else the model knows allowed for.
 */
public final class LevelAgainstOthersCalculator {

  private static final String NUMBER = "-?\\d{1,12}(\\.\\d{1,12})?";
  private static final int NAMED = 12;

  private LevelAgainstOthersCalculator() {}

  /**
   * Compares a level with all others.
   *
   * @param records any records
   * @param model what take may depend on beside the column, such as that of the analysis
   * @param asked column and level
   * @param options margin, level, draws, seed
   * @return the answer
   * @throws IllegalArgumentException if there is no such column or level, naming those there are,
   *     or if all assessed grafts have the level
   * @throws org.taketally.model.CannotFit if the records can't answer, saying why
   */
  public static LevelAgainstOthers of(
      GraftRecords records, TakeModel model, Asked asked, AnswerOptions options) {
    String column = asked.column();
    TakeModel beside = beside(model, column);
    Set<String> needed = new LinkedHashSet<>(SuggestedModel.needed(beside));
    needed.add(column);
    Cells cells = CellsOf.records(records, needed);
    Factor all =
        cells.findFactor(column).or(() -> cells.findMeasure(column).map(Factor::of)).orElseThrow();
    String level = level(all, asked.level());
    requireOthers(cells, all, level);
    FactorVerdict verdict =
        RootstockVerdictCalculator.ofTypeAlone(
            beside.compare(column), cells.apart(column, level, LevelAgainstOthers.OTHERS), options);
    return new LevelAgainstOthers(
        column, level, verdict, SharedFinder.of(records, column, level, options));
  }

  /**
   * What is asked.
   *
   * @param column of the records
   * @param level one of its levels
   */
  public record Asked(String column, String level) {}

  /** The model without the column, alone or together with another; its question a circumstance. */
  private static TakeModel beside(TakeModel model, String column) {
    TakeModel beside = model;
    if (model.compared().isPresent() && !model.compared().get().equals(column)) {
      String question = model.compared().get();
      beside = beside.varying().contains(question) ? beside : beside.adjustFor(question);
    }
    for (Map.Entry<String, List<String>> both : model.together().entrySet()) {
      beside = both.getValue().contains(column) ? beside.without(both.getKey()) : beside;
    }
    if (column.equals(RecordColumn.CULTIVAR.columnName())
        || column.equals(RecordColumn.ROOTSTOCK.columnName())) {
      beside = beside.without(TakeModel.PAIRING);
    }
    return beside.without(column);
  }

  private static void requireOthers(Cells cells, Factor all, String level) {
    int one = all.indexOf(level);
    long others = 0;
    for (int cell = 0; cell < cells.size(); cell++) {
      int code = all.code(cell);
      others += code == one || code == Factor.MISSING ? 0 : cells.grafts(cell);
    }
    if (others == 0) {
      throw new IllegalArgumentException(
          "every assessed graft has %s \"%s\", so there are no others to compare with; read records that hold others too, or ask about another column"
              .formatted(all.name(), level));
    }
  }

  /** Whether both are one number, as 8 and 8.0, which a sheet may hold of either. */
  private static boolean sameNumber(String level, String asked) {
    return level.matches(NUMBER)
        && asked.matches(NUMBER)
        && new BigDecimal(level).compareTo(new BigDecimal(asked)) == 0;
  }

  private static String level(Factor all, String asked) {
    if (all.levels().contains(asked)) {
      return asked;
    }
    List<String> alike =
        all.levels().stream()
            .filter(level -> level.equalsIgnoreCase(asked) || sameNumber(level, asked))
            .toList();
    if (alike.size() == 1) {
      return alike.get(0);
    }
    List<String> first = all.levels().subList(0, Math.min(NAMED, all.size()));
    throw new IllegalArgumentException(
        "no assessed graft has %s \"%s\"; there are %s%s"
            .formatted(
                all.name(),
                asked,
                String.join(", ", first),
                first.size() < all.size() ? ", ..." : ""));
  }
}
