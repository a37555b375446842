package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
 * @param byHand the view of two rootstocks that can be followed by hand; empty unless there are
 *     two, or one stands out
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
   * @param strata what the comparison is made within, in words
   * @param oddsRatio Mantel-Haenszel odds of taking on {@code first} against {@code second}; empty
   *     if no stratum has both or the ratio has no finite value
   * @param difference Mantel-Haenszel difference in take, first minus second, -1 to 1
   * @param agreement p of Breslow-Day with Tarone's correction that the strata agree, 0 to 1
   * @param sentence the same in words, flagged where strata disagree
   */
  public record TwoStocks(
      String first,
      String second,
      String strata,
      Optional<Estimate> oddsRatio,
      Optional<Estimate> difference,
      double agreement,
      String sentence) {}

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
    pairings.ifPresent(answer -> tables.add(answer.table()));
    return tables;
  }
}
