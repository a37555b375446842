package org.taketally.answers.effects;

import java.util.List;
import org.taketally.answers.Answer;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.Question;
import org.taketally.answers.counts.TakeCount;
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
   * @param probabilityWorse chance that it takes worse than expected by over the margin, 0 to 1
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
      double probabilityWorse,
      boolean flagged) {}

  /**
   * The short list.
   *
   * @return flagged pairings, worst deficit first
   */
  public List<Pairing> flagged() {
    return pairings.stream().filter(Pairing::flagged).toList();
  }

  @Override
  public Question question() {
    return Question.PAIRINGS;
  }
}
