package org.taketally.wording.figures;

import org.taketally.watch.TakeWatch;
import org.taketally.watch.WatchedSeason;
import org.taketally.wording.TakeWatchWords;

/** The chart of a season in words. */
public final class SeasonChartFigureWords {

  /** What is shown. */
  public static final String SUBTITLE = "Failures beyond those expected, by day of counting";

  /** The key's word for the CUSUM. */
  public static final String GATHERED = "gathered";

  /** The key's word for an alarm. */
  public static final String ALARM = "alarm";

  /** The key's word for the moving average. */
  public static final String LATELY = "lately, in 100 grafts";

  /** The key's word for a moving average beyond its limit. */
  public static final String LATELY_BEYOND = "lately, beyond the limit";

  /** The key's word for the limits. */
  public static final String LIMIT = "limit";

  /** How to read it. */
  public static final String NOTE =
      "Above: what has gathered beyond chance; at the limit it alarms and starts anew. Below: how"
          + " many more fail lately than expected; it raises no alarm of its own.";

  private final WatchedSeason season;

  /**
   * The words of a figure.
   *
   * @param season the figure shows
   */
  public SeasonChartFigureWords(WatchedSeason season) {
    this.season = season;
  }

  /**
   * The title, which is what was found.
   *
   * @return a sentence without a full stop
   */
  public String title() {
    TakeWatch watch = season.watch();
    return watch.latest().map(alarm -> "Alarm on " + alarm.day()).orElse("No alarm in this season");
  }

  /**
   * The figure for those who can't see it.
   *
   * @return a few sentences
   */
  public String description() {
    TakeWatchWords words = TakeWatchWords.of(season);
    return words.headline() + " " + words.lately();
  }
}
