package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.taketally.answers.counts.Agreement;
import org.taketally.answers.counts.PooledEstimate;
import org.taketally.answers.counts.StratifiedTable;
import org.taketally.answers.counts.Stratum;
import org.taketally.answers.counts.TakeCount;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.CannotFit;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.terms.Interval;

/** Works out a {@link RootstockVerdict}: the stock's type, its condition, and the side views. */
final class RootstockVerdicts {

  private static final String CONDITION = "stock_condition";

  /** Share of nucellar seedlings true to type that is supposed; see docs/methods.md. */
  private static final Interval TRUE_TO_TYPE = new Interval(0.80, 0.90, 0.95);

  private RootstockVerdicts() {}

  static RootstockVerdict of(TakeModel model, Cells cells, AnswerOptions options) {
    String compared = model.compared().orElse("rootstock");
    try {
      TakeFit fit = SturdyFit.of(cells, model.compare(compared)).fit();
      Averaging averaging = new Averaging(fit, options);
      return averaging.knows(compared)
          ? of(averaging, compared, options)
          : RootstockVerdict.of(FactorVerdicts.refused(fit.cells(), compared, options));
    } catch (CannotFit problem) {
      if (problem.reason() == CannotFit.Reason.ALL_TOOK
          || problem.reason() == CannotFit.Reason.NONE_TOOK) {
        return RootstockVerdict.of(FactorVerdicts.byCounts(cells, compared, options));
      }
      throw problem;
    }
  }

  static RootstockVerdict of(Averaging averaging, String compared, AnswerOptions options) {
    FactorVerdict type = FactorVerdicts.of(averaging, compared, options);
    Optional<FactorVerdict> condition =
        !compared.equals(CONDITION) && averaging.knows(CONDITION)
            ? Optional.of(FactorVerdicts.of(averaging, CONDITION, options))
            : Optional.empty();
    return new RootstockVerdict(
        type,
        condition,
        compared.equals("rootstock") && Swap.varies(averaging.fit(), TakeModel.PAIRING)
            ? Optional.of(Pairings.of(averaging, options))
            : Optional.empty(),
        twoStocks(averaging.fit().cells(), type, options),
        type.size().filter(s -> compared.equals("rootstock")).map(RootstockVerdicts::offType));
  }

  /** A mix of true seedlings and off-types dilutes a difference in proportion to the true ones. */
  private static RootstockVerdict.OffType offType(FactorVerdict.Size size) {
    double largest = size.largest().value();
    double pure = Math.min(1, largest / TRUE_TO_TYPE.low());
    double high = Math.min(1, size.largest().high() / TRUE_TO_TYPE.low());
    return new RootstockVerdict.OffType(
        TRUE_TO_TYPE,
        largest,
        pure,
        "If the stocks are seedlings and only %s of them are true to type, a real difference looks smaller than it is: among stocks true to type the largest gap would be up to %s (likely under %s)."
            .formatted(Words.percents(TRUE_TO_TYPE), Words.points(pure), Words.points(high)));
  }

  private static Optional<RootstockVerdict.TwoStocks> twoStocks(
      Cells cells, FactorVerdict type, AnswerOptions options) {
    List<String> levels = type.levels().stream().map(FactorVerdict.LevelTake::level).toList();
    List<String> out = type.standingOut();
    if (cells.findFactor("cultivar").isEmpty() || (levels.size() != 2 && out.size() != 1)) {
      return Optional.empty();
    }
    String first = out.size() == 1 ? out.get(0) : levels.get(0);
    String second =
        levels.size() == 2 ? levels.get(levels.indexOf(first) == 0 ? 1 : 0) : "all others together";
    StratifiedTable table = StratifiedTable.of(strata(cells, type.factor(), first));
    Agreement agreement = table.agreement();
    Optional<PooledEstimate> odds = table.oddsRatio(options.level());
    Optional<PooledEstimate> difference = table.difference(options.level());
    String sentence =
        difference
            .map(d -> sentence(first, second, d))
            .orElse("By hand: no cultivar was grafted on both sides of this comparison.");
    return Optional.of(
        new RootstockVerdict.TwoStocks(
            first,
            second,
            "cultivar",
            odds.map(o -> new Estimate(o.value(), o.interval())),
            difference.map(d -> new Estimate(d.value(), d.interval())),
            agreement.pValue(),
            sentence + " " + agreement.sentence()));
  }

  private static String sentence(String first, String second, PooledEstimate d) {
    return "To follow by hand (Mantel-Haenszel, cultivar by cultivar, nothing else adjusted): %s against %s, %s %s (likely %s)."
        .formatted(
            first,
            second,
            Words.points(d.value()),
            d.value() < 0 ? "lower" : "higher",
            Words.points(d.interval()));
  }

  private static List<Stratum> strata(Cells cells, String column, String first) {
    Factor compared = cells.factor(column);
    Factor cultivar = cells.factor("cultivar");
    TreeMap<String, long[]> counts = new TreeMap<>();
    for (int i = 0; i < cells.size(); i++) {
      if (compared.codes()[i] != Factor.MISSING && cultivar.codes()[i] != Factor.MISSING) {
        long[] count =
            counts.computeIfAbsent(cultivar.levels().get(cultivar.codes()[i]), c -> new long[4]);
        int side = compared.levels().get(compared.codes()[i]).equals(first) ? 0 : 2;
        count[side] += cells.takes()[i];
        count[side + 1] += cells.grafts()[i];
      }
    }
    List<Stratum> strata = new ArrayList<>();
    counts.forEach(
        (name, c) ->
            strata.add(new Stratum(name, new TakeCount(c[0], c[1]), new TakeCount(c[2], c[3]))));
    return strata;
  }
}
