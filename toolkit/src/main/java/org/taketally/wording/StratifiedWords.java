package org.taketally.wording;

import java.util.List;
import java.util.Locale;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.Agreement;
import org.taketally.answers.verdict.RootstockVerdict.Picked;
import org.taketally.answers.verdict.RootstockVerdict.TwoStocks;

/** Two sides compared by hand, in words and tables. */
final class StratifiedWords {

  private StratifiedWords() {}

  static String sentence(TwoStocks view) {
    return view.difference()
        .map(difference -> sentence(view, difference) + sentence(view.agreement()))
        .orElse("By hand: no cultivar was grafted on both sides of this comparison.");
  }

  private static String sentence(TwoStocks view, Estimate difference) {
    String ratio =
        view.oddsRatio()
            .map(
                o ->
                    String.format(
                        Locale.ROOT,
                        "; odds ratio %.2f, likely %.2f to %.2f",
                        o.value(),
                        o.low(),
                        o.high()))
            .orElse("");
    String picked =
        view.picked() == Picked.FURTHEST_APART ? ", picked because they lie furthest apart" : "";
    return "To follow by hand (Mantel-Haenszel, cultivar by cultivar, nothing else adjusted): %s against %s, %s %s (likely %s%s). "
        .formatted(
            view.first(),
            others(view) + picked,
            Words.points(difference.value()),
            difference.value() < 0 ? "lower" : "higher",
            Words.points(difference.interval()),
            ratio);
  }

  /** The second side's name. */
  static String others(TwoStocks view) {
    return view.second().orElse("all others together");
  }

  /** Whether the strata tell the same story. */
  static String sentence(Agreement agreement) {
    return switch (agreement.verdict()) {
      case AGREE ->
          "The %d groups agree as far as these counts can show.".formatted(agreement.strata());
      case DISAGREE ->
          String.format(
              Locale.ROOT,
              "The %d groups disagree: chance alone would part them so far only %s times in 100. "
                  + "One figure for all of them hides that; look at each.",
              agreement.strata(),
              timesInHundred(agreement));
      case NOT_COMPARABLE -> "Too few groups hold both to see whether they agree.";
    };
  }

  private static String timesInHundred(Agreement agreement) {
    double times = 100 * agreement.pValue();
    return times < 0.1 ? "under 0.1" : String.format(Locale.ROOT, "%.1f", times);
  }

  static List<AnswerTable> tables(TwoStocks view) {
    return List.of(pooled(view), byCultivar(view));
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
        .forEach(s -> strata.row(s.name(), view.first(), s.first(), others(view), s.second()));
    return strata.build();
  }

  private static AnswerTable pooled(TwoStocks view) {
    return AnswerTable.of(
            "by-hand",
            "The same over all cultivars (Mantel-Haenszel); P that cultivars agree (Breslow-Day,"
                + " Tarone)",
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
            others(view),
            view.difference().map(Estimate::value).orElse(null),
            view.difference().map(Estimate::low).orElse(null),
            view.difference().map(Estimate::high).orElse(null),
            view.oddsRatio().map(Estimate::value).orElse(null),
            view.oddsRatio().map(Estimate::low).orElse(null),
            view.oddsRatio().map(Estimate::high).orElse(null),
            view.agreement().pValue())
        .build();
  }
}
