package org.taketally.wording.pages;

/** The page of an order book in words. */
public final class OrderPageWords {

  /** Title of the page. */
  public static final String TITLE = "Grafts to make and sticks to cut";

  /** What the page is. */
  public static final String LEAD = "How many grafts are enough for the order book.";

  /** Heading of the lines. */
  public static final String LINES = "Line by line";

  /** Caption of the lines. */
  public static final String CAPTION = "ranges are those of 8 seasons in 10";

  /** Heading of what was supposed. */
  public static final String RESTS_ON = "What this rests on";

  private OrderPageWords() {}
}
