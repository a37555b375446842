package org.taketally.figure;

import org.taketally.watch.WatchedSeason;

/** Figures of plans and of the running season, as SVG text; see {@link Figures}. */
public final class PlanFigures {

  private PlanFigures() {}

  /**
   * The chart of a season: what has gathered against the limit, and how things stand lately.
   *
   * @param season as watched
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String season(WatchedSeason season, FigureSize size) {
    return SeasonChartFigure.draw(season, size);
  }
}
