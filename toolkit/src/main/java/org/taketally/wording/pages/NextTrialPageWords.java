package org.taketally.wording.pages;

/** The page of what to graft next, in words. */
public final class NextTrialPageWords {

  /** Title of the page. */
  public static final String TITLE = "What to graft next";

  /** What the page is. */
  public static final String LEAD =
      "The grafts that, added to the records, most likely settle whether the rootstock matters.";

  /** Heading of what would come of them. */
  public static final String BRING = "What they would bring";

  /** Heading of which graft goes where. */
  public static final String LAYOUT = "The layout";

  private NextTrialPageWords() {}
}
