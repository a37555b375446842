package org.taketally.wording.figures;

import java.util.List;
import java.util.Optional;
import org.taketally.answers.survival.LateLoss;
import org.taketally.answers.survival.LateLoss.FactorLoss;
import org.taketally.answers.survival.LateLoss.LevelLoss;
import org.taketally.wording.Wording;
import org.taketally.wording.Words;

/** The figures of late loss in words. */
public final class LateLossFigureWords {

  /** What the axis of days shows. */
  public static final String DAYS = "days after the first count";

  /** Heading of the grafts still followed. */
  public static final String AT_RISK = "Grafts at risk";

  /** The key's word for a share. */
  public static final String COUNTED = "lost later, as counted";

  /** What the axis of shares shows. */
  public static final String IN_100 = "lost of 100 once alive";

  private final LateLoss answer;

  /**
   * The words of the figures.
   *
   * @param answer they show
   */
  public LateLossFigureWords(LateLoss answer) {
    this.answer = answer;
  }

  /**
   * The title, which is what was found.
   *
   * @return a sentence without a full stop
   */
  public String title() {
    return "About "
        + Words.percent(answer.all().lateLoss().value())
        + " of the grafts once alive were lost later";
  }

  /**
   * What is shown, from how many grafts.
   *
   * @param factor whose levels are shown; empty if all grafts together
   * @return a few words
   */
  public String subtitle(Optional<FactorLoss> factor) {
    return "Share still alive%s; %s followed from the first count"
        .formatted(
            factor.map(f -> " by " + Words.column(f.factor())).orElse(""),
            Words.count(answer.all().onceAlive(), "graft"));
  }

  /**
   * The figure for those who can't see it.
   *
   * @param levels shown
   * @return a few sentences
   */
  public String description(List<LevelLoss> levels) {
    StringBuilder text = new StringBuilder(Wording.of(answer).headline());
    for (LevelLoss level : levels) {
      text.append(' ').append(level.name()).append(": ");
      text.append(Words.percent(level.lateLoss().value())).append(" lost (likely ");
      text.append(Words.percents(level.lateLoss().interval())).append("), of ");
      text.append(Words.count(level.onceAlive(), "graft")).append('.');
    }
    return text.toString();
  }

  /**
   * A line's name.
   *
   * @param level whose line it is
   * @param named whether it stands among others
   * @return a few words
   */
  public String line(LevelLoss level, boolean named) {
    String lost = Words.percent(level.lateLoss().value()) + " lost";
    return named ? level.name() + ", " + lost : lost;
  }

  /**
   * Title of the figure of levels.
   *
   * @param factor shown
   * @return a few words
   */
  public String levelsTitle(FactorLoss factor) {
    return "Late loss by " + Words.column(factor.factor());
  }

  /**
   * What the figure of levels shows, from how many grafts.
   *
   * @return a few words
   */
  public String levelsSubtitle() {
    return "Share of the grafts once alive that were lost later, highest first; %s"
        .formatted(Words.count(answer.all().onceAlive(), "graft"));
  }

  /**
   * The figure of levels for those who can't see it.
   *
   * @param factor shown
   * @return a few sentences
   */
  public String levelsDescription(FactorLoss factor) {
    List<String> all = factor.levels().stream().map(this::detail).toList();
    return levelsSubtitle() + ". " + Lists.words(Lists.ENGLISH, all) + ".";
  }

  /**
   * A level in full.
   *
   * @param level any
   * @return a few words
   */
  public String detail(LevelLoss level) {
    return "%s %s lost (likely %s)"
        .formatted(
            level.name(),
            Words.percent(level.lateLoss().value()),
            Words.percents(level.lateLoss().interval()));
  }

  /**
   * That rows are left out.
   *
   * @param left how many
   * @return a few words
   */
  public String gap(int left) {
    return Words.count(left) + " levels between are in the table";
  }
}
