package org.taketally.wording.figures;

import org.taketally.plan.size.TrialSize;
import org.taketally.wording.TrialSizeWords;
import org.taketally.wording.Words;

/** The chance of a verdict against grafts in words. */
public final class TrialSizeFigureWords {

  /** The title. */
  public static final String TITLE = "Chance that the trial shows it";

  /** What the axis shows. */
  public static final String AXIS = "grafts on the first stock";

  /** The key's word for finding a difference. */
  public static final String DIFFERENCE = "a difference, if there is one";

  /** The key's word for showing that none matters. */
  public static final String EQUIVALENCE = "none that matters, if there is none";

  /** The key's word for the chance wanted. */
  public static final String WANTED = "chance wanted";

  private final TrialSize size;

  /**
   * The words of a figure.
   *
   * @param size the figure shows
   */
  public TrialSizeFigureWords(TrialSize size) {
    this.size = size;
  }

  /**
   * What is shown.
   *
   * @return a few words
   */
  public String subtitle() {
    return "%s against %s; margin %s"
        .formatted(
            Words.statedPercent(size.question().firstTake()),
            Words.statedPercent(size.question().secondTake()),
            Words.statedPoints(size.question().margin()));
  }

  /**
   * The figure for those who can't see it.
   *
   * @return a few sentences
   */
  public String description() {
    TrialSizeWords words = TrialSizeWords.of(size);
    return words.difference() + " " + words.equivalence();
  }
}
