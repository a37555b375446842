package org.taketally.wording.pages;

/** The page of a watched season, and of past ones replayed, in words. */
public final class WatchPageWords {

  /** A warning above everything: it names hands. */
  public static final String STAMP = "Not for publication";

  /** Title of the page. */
  public static final String TITLE = "The running season";

  /** What the page is. */
  public static final String LEAD =
      "Grafts counted so far against what past seasons would lead you to expect.";

  /** Heading of the first part. */
  public static final String GOING_WRONG = "Is this season going wrong?";

  /** Heading of the causes. */
  public static final String CHECK_FIRST = "What to check first";

  /** Heading of failures seen and expected. */
  public static final String SEEN = "Seen and expected";

  /** What they are told by. */
  public static final String SEEN_BY = "By hand, week, stock and batch";

  /** Heading of what it rests on. */
  public static final String RESTS_ON = "What this rests on";

  /** Title of the page of a replay. */
  public static final String REPLAY_TITLE = "Past seasons replayed";

  /** What the page of a replay is. */
  public static final String REPLAY_LEAD =
      "Each season watched against those before it, as if it ran now.";

  /** Heading of its first part. */
  public static final String CAUGHT = "What would watching have caught?";

  private WatchPageWords() {}

  /**
   * Heading of a season.
   *
   * @param season its name
   * @return e.g. {@code Season 2025}
   */
  public static String season(String season) {
    return "Season " + season;
  }
}
