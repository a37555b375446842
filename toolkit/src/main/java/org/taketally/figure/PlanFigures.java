package org.taketally.figure;

import org.taketally.plan.layout.TrialLayout;
import org.taketally.plan.order.GraftOrder;
import org.taketally.plan.size.TrialSize;
import org.taketally.plan.size.VerdictChances;
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

  /**
   * As {@link #season(WatchedSeason, FigureSize)}, wide.
   *
   * @param season as watched
   * @return an {@code <svg>} element
   */
  public static String season(WatchedSeason season) {
    return season(season, FigureSize.WIDE);
  }

  /**
   * Chance of showing a difference, and of showing that none matters, against grafts.
   *
   * @param trial its size
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String trialSize(TrialSize trial, FigureSize size) {
    return TrialSizeFigure.draw(trial, size);
  }

  /**
   * As {@link #trialSize(TrialSize, FigureSize)}, wide.
   *
   * @param trial its size
   * @return an {@code <svg>} element
   */
  public static String trialSize(TrialSize trial) {
    return trialSize(trial, FigureSize.WIDE);
  }

  /**
   * A map of a layout: the plots of each session in the order of work.
   *
   * @param layout which graft goes where
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String layout(TrialLayout layout, FigureSize size) {
    return LayoutMapFigure.draw(layout, size);
  }

  /**
   * As {@link #layout(TrialLayout, FigureSize)}, wide.
   *
   * @param layout which graft goes where
   * @return an {@code <svg>} element
   */
  public static String layout(TrialLayout layout) {
    return layout(layout, FigureSize.WIDE);
  }

  /**
   * What share of each line's grafts ends as saleable trees, and how far seasons move it.
   *
   * @param order grafts line by line
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String order(GraftOrder order, FigureSize size) {
    return OrderFigure.draw(order, size);
  }

  /**
   * As {@link #order(GraftOrder, FigureSize)}, wide.
   *
   * @param order grafts line by line
   * @return an {@code <svg>} element
   */
  public static String order(GraftOrder order) {
    return order(order, FigureSize.WIDE);
  }

  /**
   * The chance of each verdict, from trials made up.
   *
   * @param chances of them
   * @param size shape it is laid out for
   * @return an {@code <svg>} element
   */
  public static String chances(VerdictChances chances, FigureSize size) {
    return VerdictChancesFigure.draw(chances, size);
  }

  /**
   * As {@link #chances(VerdictChances, FigureSize)}, wide.
   *
   * @param chances of them
   * @return an {@code <svg>} element
   */
  public static String chances(VerdictChances chances) {
    return chances(chances, FigureSize.WIDE);
  }
}
