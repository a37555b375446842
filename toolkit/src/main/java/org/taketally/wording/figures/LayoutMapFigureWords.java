package org.taketally.wording.figures;

import org.taketally.plan.layout.Plot;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.wording.TrialLayoutWords;

/** The map of a layout in words. */
public final class LayoutMapFigureWords {

  /** The title. */
  public static final String TITLE = "Which graft goes where";

  /** What is shown. */
  public static final String SUBTITLE = "Plots of each session in the order of work";

  private final TrialLayout layout;

  /**
   * The words of a figure.
   *
   * @param layout the figure shows
   */
  public LayoutMapFigureWords(TrialLayout layout) {
    this.layout = layout;
  }

  /**
   * Heading of a session.
   *
   * @param block its name
   * @param first its first plot
   * @return e.g. {@code Session 2: GR-1, day 1}
   */
  public static String session(String block, Plot first) {
    return "Session %s: %s, %s".formatted(block, first.session().grafter(), first.session().day());
  }

  /**
   * The figure for those who can't see it.
   *
   * @return a few sentences
   */
  public String description() {
    return TrialLayoutWords.of(layout).headline();
  }
}
