package org.taketally.wording.pages;

/** The page of a trial's size in words. */
public final class TrialSizePageWords {

  /** Title of the page. */
  public static final String TITLE = "How many grafts a trial takes";

  /** What the page is. */
  public static final String LEAD =
      "Grafts to find a difference between two stocks, and to show that there is none that"
          + " matters.";

  /** Heading and caption of the table. */
  public static final String CHANCE = "Chance of showing it";

  /** Heading of what it rests on. */
  public static final String RESTS_ON = "What this rests on";

  private TrialSizePageWords() {}
}
