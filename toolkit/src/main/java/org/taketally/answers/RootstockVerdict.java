package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.counts.Stratum;
import org.taketally.cells.Cells;
import org.taketally.model.TakeModel;
import org.taketally.terms.Interval;

/**
 * Does the rootstock matter? The verdict on the stock's type, and beside it everything a grower
 * would ask next.
 *
 * @param type verdict on the compared column, usually {@code rootstock}
 * @param condition the same for {@code stock_condition}; empty if the records lack it
 * @param pairings cultivars that fail on one stock alone; empty if it can't be estimated
 * @param byHand the view of two rootstocks that can be followed by hand: the two there are, the one
 *     that stands out against all others, or the two furthest apart; empty without cultivars
 * @param offType what seedlings not true to type would do to the differences
 */
public record RootstockVerdict(
    FactorVerdict type,
    Optional<FactorVerdict> condition,
    Optional<Pairings> pairings,
    Optional<TwoStocks> byHand,
    Optional<OffType> offType)
    implements Answer {

  /**
   * Two stocks compared cultivar by cultivar, and pooled.
   *
   * @param first a rootstock
   * @param second the other one, or all others together
   * @param cultivars takes on both sides, one a cultivar that was grafted on both
   * @param oddsRatio Mantel-Haenszel odds of taking on {@code first} against {@code second}; empty
   *     if no stratum has both or the ratio has no finite value
   * @param difference Mantel-Haenszel difference in take, first minus second, -1 to 1
   * @param agreement p of Breslow-Day with Tarone's correction that the strata agree, 0 to 1
   * @param sentence the same in words, flagged where strata disagree
   */
  public record TwoStocks(
      String first,
      String second,
      List<Stratum> cultivars,
      Optional<Estimate> oddsRatio,
      Optional<Estimate> difference,
      double agreement,
      String sentence) {

    public TwoStocks {
      cultivars = List.copyOf(cultivars);
    }
  }

  /**
   * If only some seedlings are true to type, a real difference looks smaller.
   *
   * @param trueToType share of seedlings true to type supposed, low to high
   * @param largest largest difference as estimated, 0 to 1
   * @param largestIfPure what it would be among seedlings true to type, at the low share, 0 to 1
   * @param sentence the same in words
   */
  public record OffType(
      Interval trueToType, double largest, double largestIfPure, String sentence) {}

  /**
   * Fits the model, or the nearest one the records can carry, and answers. Where none or all grafts
   * took no model can be fitted, and the verdict rests on the counts alone.
   *
   * @param model what take may depend on; its compared column is the question, {@code rootstock} if
   *     it has none
   * @param cells the records
   * @param options margin, level, draws, seed
   * @return the verdict
   * @throws org.taketally.model.CannotFit if the records can't answer, saying why
   * @throws IllegalArgumentException if the records lack the compared column
   */
  public static RootstockVerdict of(TakeModel model, Cells cells, AnswerOptions options) {
    return RootstockVerdicts.of(model, cells, options);
  }

  /** A verdict without side views. */
  static RootstockVerdict of(FactorVerdict type) {
    return new RootstockVerdict(
        type, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  /**
   * The verdict on the stock's type.
   *
   * @return one of five
   */
  public Verdict verdict() {
    return type.verdict();
  }

  @Override
  public String title() {
    return type.title();
  }

  @Override
  public String headline() {
    return type.headline();
  }

  @Override
  public String text() {
    List<String> lines = new ArrayList<>(List.of(type.text()));
    condition.ifPresent(answer -> lines.add("Beside it, stock condition. " + answer.headline()));
    pairings.ifPresent(answer -> lines.add(answer.headline()));
    byHand.ifPresent(view -> lines.add(view.sentence()));
    offType.ifPresent(line -> lines.add(line.sentence()));
    lines.add(
        "Take is not lasting union: stocks with equal take can still differ in growth, health and"
            + " how long the union holds, which these records don't show.");
    return String.join("\n", lines);
  }

  @Override
  public AnswerTable table() {
    return type.table();
  }

  /** {@inheritDoc} Those of the stock's type, then stock condition, pairings, the view by hand. */
  @Override
  public List<AnswerTable> tables() {
    List<AnswerTable> tables = new ArrayList<>(type.tables());
    condition.ifPresent(answer -> tables.addAll(answer.tables()));
    byHand.ifPresent(view -> tables.addAll(List.of(pooled(view), byCultivar(view))));
    pairings.ifPresent(answer -> tables.add(answer.table()));
    return tables;
  }

  static AnswerTable byCultivar(TwoStocks view) {
    AnswerTable.Builder strata =
        AnswerTable.of(
            "by-hand-cultivars",
            "Two sides compared by hand, cultivar by cultivar",
            AnswerColumn.CULTIVAR,
            AnswerColumn.LEVEL,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE,
            AnswerColumn.OTHER_LEVEL,
            AnswerColumn.OTHER_GRAFTS,
            AnswerColumn.OTHER_TAKES,
            AnswerColumn.OTHER_RAW_TAKE);
    view.cultivars()
        .forEach(s -> strata.row(s.name(), view.first(), s.first(), view.second(), s.second()));
    return strata.build();
  }

  private static AnswerTable pooled(TwoStocks view) {
    return AnswerTable.of(
            "by-hand",
            "The same over all cultivars (Mantel-Haenszel); P that cultivars agree (Breslow-Day, Tarone)",
            AnswerColumn.LEVEL,
            AnswerColumn.OTHER_LEVEL,
            AnswerColumn.DIFFERENCE,
            AnswerColumn.DIFFERENCE_LOW,
            AnswerColumn.DIFFERENCE_HIGH,
            AnswerColumn.ODDS_RATIO,
            AnswerColumn.ODDS_RATIO_LOW,
            AnswerColumn.ODDS_RATIO_HIGH,
            AnswerColumn.P_VALUE)
        .row(
            view.first(),
            view.second(),
            view.difference().map(Estimate::value).orElse(null),
            view.difference().map(Estimate::low).orElse(null),
            view.difference().map(Estimate::high).orElse(null),
            view.oddsRatio().map(Estimate::value).orElse(null),
            view.oddsRatio().map(Estimate::low).orElse(null),
            view.oddsRatio().map(Estimate::high).orElse(null),
            view.agreement())
        .build();
  }
}
