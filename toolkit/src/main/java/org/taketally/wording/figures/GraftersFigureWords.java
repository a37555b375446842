package org.taketally.wording.figures;

import org.taketally.answers.effects.Grafters;
import org.taketally.answers.effects.Grafters.GrafterTake;
import org.taketally.wording.Words;

/** The figure of grafters in words. */
public final class GraftersFigureWords {

  private final Grafters grafters;

  /**
   * The words of a figure.
   *
   * @param grafters the figure shows
   */
  public GraftersFigureWords(Grafters grafters) {
    this.grafters = grafters;
  }

  /**
   * The title, which is what was found.
   *
   * @return a sentence without a full stop
   */
  public String title() {
    return "Two grafters typically differ by " + Words.points(grafters.typical().value());
  }

  /**
   * What is shown, from how many grafts.
   *
   * @return a few words
   */
  public String subtitle() {
    return "Take had all grafted the same mix; %s; %s"
        .formatted(
            Words.count(grafters.grafters().size(), "grafter"),
            Words.count(grafters.tally().grafts(), "graft"));
  }

  /**
   * The figure for those who can't see it.
   *
   * @return a few sentences
   */
  public String description() {
    return "%s. Typical difference between two: %s (likely %s). %s."
        .formatted(
            subtitle(),
            Words.points(grafters.typical().value()),
            Words.points(grafters.typical().interval()),
            Lists.words(Lists.ENGLISH, grafters.grafters().stream().map(this::detail).toList()));
  }

  /**
   * A grafter in full.
   *
   * @param grafter any
   * @return a few words
   */
  public String detail(GrafterTake grafter) {
    return "%s %s, %s"
        .formatted(
            grafter.shownAs(),
            Words.take(grafter.take()),
            Words.count(grafter.tally().grafts(), "graft"));
  }

  /**
   * That letters stand for people.
   *
   * @return a sentence
   */
  public String letters() {
    return "Letters stand for people; names are shown only when asked for.";
  }

  /**
   * That rows are left out.
   *
   * @param left how many
   * @return a few words
   */
  public String gap(int left) {
    return Words.count(left) + " grafters between are in the table";
  }
}
