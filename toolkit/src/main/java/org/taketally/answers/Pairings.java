package org.taketally.answers;

import java.util.List;
import org.taketally.answers.counts.TakeCount;
import org.taketally.model.TakeFit;
import org.taketally.terms.Interval;

/**
 * Which cultivars do worse on one rootstock than cultivar and rootstock alone would lead you to
 * expect.
 *
 * @param pairings worst deficit first; empty if pairings don't vary in the model
 * @param spread standard deviation of the pairing effect, logits; 0 if pairings don't vary in the
 *     model
 * @param falseShare expected share of wrongly listed pairings among those flagged, 0 to 1; 0 if
 *     none is flagged
 * @param tally grafts and takes behind it
 * @param options margin and level used
 */
public record Pairings(
    List<Pairing> pairings,
    Estimate spread,
    double falseShare,
    TakeCount tally,
    AnswerOptions options)
    implements Answer {

  /** Largest expected share of wrongly listed pairings on the short list. */
  public static final double FALSE_SHARE_AT_MOST = 0.10;

  public Pairings {
    pairings = List.copyOf(pairings);
  }

  /**
   * One cultivar on one rootstock.
   *
   * @param cultivar name
   * @param rootstock name
   * @param tally its grafts and takes
   * @param counted Wilson interval of the counted take, 0 to 1
   * @param expected take expected from cultivar and rootstock alone in the conditions of these
   *     grafts, 0 to 1
   * @param take adjusted take with the pairing's own effect, drawn toward {@code expected}, 0 to 1
   * @param difference take minus expected, -1 to 1
   * @param chanceWorse chance that it takes worse than expected by over the margin, 0 to 1
   * @param flagged whether it is on the short list
   */
  public record Pairing(
      String cultivar,
      String rootstock,
      TakeCount tally,
      Interval counted,
      double expected,
      Estimate take,
      Estimate difference,
      double chanceWorse,
      boolean flagged) {}

  /**
   * From a fit in which the pairing varies.
   *
   * @param fit the fit; without the pairing in its model, the headline says so
   * @param options margin, level, draws and seed
   * @return the comparison
   */
  public static Pairings of(TakeFit fit, AnswerOptions options) {
    return of(new Averaging(fit, options), options);
  }

  static Pairings of(Averaging averaging, AnswerOptions options) {
    return new PairingsCompared(averaging, options).answer();
  }

  /**
   * The short list.
   *
   * @return flagged pairings, worst deficit first
   */
  public List<Pairing> flagged() {
    return pairings.stream().filter(Pairing::flagged).toList();
  }

  @Override
  public String title() {
    return "Does a cultivar fail on one rootstock alone?";
  }

  @Override
  public String headline() {
    if (pairings.isEmpty()) {
      return "No single pairing was looked at: the model takes each cultivar to behave alike on every rootstock; %s."
          .formatted(Words.count(tally.grafts(), "graft"));
    }
    String from =
        " (%s, %s)"
            .formatted(
                Words.count(pairings.size(), "pairing"), Words.count(tally.grafts(), "graft"));
    if (flagged().isEmpty()) {
      return "No cultivar is shown to fail on one rootstock alone by more than %s%s."
          .formatted(Words.points(options.margin()), from);
    }
    return "Worse than cultivar and rootstock alone lead you to expect: "
        + Words.list(flagged().stream().map(Pairings::inWords).toList())
        + "; about %s of such a list are false alarms%s."
            .formatted(Words.percent(falseShare), from);
  }

  private static String inWords(Pairing p) {
    return "%s on %s takes %s where %s was expected"
        .formatted(p.cultivar(), p.rootstock(), Words.take(p.take()), Words.percent(p.expected()));
  }

  @Override
  public String text() {
    return headline()
        + "\nA pairing's own effect is drawn toward none, the more the fewer its grafts. It speaks of"
        + " take only: a union that took can still fail in later years.";
  }

  @Override
  public AnswerTable table() {
    AnswerTable.Builder table =
        AnswerTable.of(
            "pairings",
            "Cultivars on rootstocks, worst deficit first",
            AnswerColumn.CULTIVAR,
            AnswerColumn.ROOTSTOCK,
            AnswerColumn.GRAFTS,
            AnswerColumn.TAKES,
            AnswerColumn.RAW_TAKE,
            AnswerColumn.RAW_LOW,
            AnswerColumn.RAW_HIGH,
            AnswerColumn.EXPECTED_TAKE,
            AnswerColumn.TAKE,
            AnswerColumn.TAKE_LOW,
            AnswerColumn.TAKE_HIGH,
            AnswerColumn.DIFFERENCE,
            AnswerColumn.DIFFERENCE_LOW,
            AnswerColumn.DIFFERENCE_HIGH,
            AnswerColumn.CHANCE_WORSE,
            AnswerColumn.FLAGGED);
    for (Pairing p : pairings) {
      table.row(
          p.cultivar(),
          p.rootstock(),
          p.tally(),
          p.counted(),
          p.expected(),
          p.take(),
          p.difference(),
          p.chanceWorse(),
          p.flagged());
    }
    return table.build();
  }
}
