package org.taketally.wording.pages;

/** What working pages share. */
public final class WorkingPageWords {

  /** Heading of a page's first part. */
  public static final String IN_SHORT = "In short";

  /** The last line of a page. */
  public static final String FOOTER = "Made with Taketally.";

  /** Caution where wood or plants change places. */
  public static final String WOOD =
      "Before budwood or plants change places, ask what plant health rules and plant variety rights"
          + " say where you are.";

  private WorkingPageWords() {}

  /**
   * Levels counted together.
   *
   * @param column season, cultivar or rootstock
   * @return e.g. {@code other cultivars}
   */
  public static String others(String column) {
    return "other " + column + "s";
  }
}
