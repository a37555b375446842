package org.taketally.wording.figures;

import java.util.List;
import org.taketally.answers.verdict.Verdict;
import org.taketally.plan.size.VerdictChances;
import org.taketally.wording.Names;
import org.taketally.wording.Words;

/** The figure of what the verdict would be, in words. */
public final class VerdictChancesFigureWords {

  /** What the axis measures. */
  public static final String AXIS = "chance of each verdict, in 100";

  /** The key's word for verdicts that settle the question. */
  public static final String SETTLES = "settles it";

  /** The key's word for the others. */
  public static final String OPEN = "leaves it open";

  /** The key's word for the bar. */
  public static final String RANGE = "what so few sets leave open";

  private final VerdictChances chances;

  /**
   * The words of a figure.
   *
   * @param chances the figure shows
   */
  public VerdictChancesFigureWords(VerdictChances chances) {
    this.chances = chances;
  }

  /**
   * The title, which is what was found.
   *
   * @return a sentence without a full stop
   */
  public String title() {
    long settled = Math.round(chances.settled() * chances.trials());
    if (settled == 0 || settled == chances.trials()) {
      return "Settled one way or the other in %s of %s made up"
          .formatted(settled == 0 ? "none" : "all", Words.count(chances.trials(), "set"));
    }
    return "Settled one way or the other with a chance of " + Words.chance(chances.settled());
  }

  /**
   * What is shown, from how many sets of grafts.
   *
   * @return a few words
   */
  public String subtitle() {
    return "What the verdict would be, in %s of grafts made up and judged like records"
        .formatted(Words.count(chances.trials(), "set"));
  }

  /**
   * The figure for those who can't see it.
   *
   * @param shown verdicts that are drawn
   * @return a few sentences
   */
  public String description(List<Verdict> shown) {
    return "%s. %s."
        .formatted(
            subtitle(), Lists.words(Lists.ENGLISH, shown.stream().map(this::detail).toList()));
  }

  /**
   * A verdict in full.
   *
   * @param verdict any
   * @return a few words
   */
  public String detail(Verdict verdict) {
    return "%s %s (%s)"
        .formatted(
            Names.of(verdict),
            Words.percent(chances.chance(verdict)),
            Words.percents(chances.estimate(verdict).interval()));
  }
}
