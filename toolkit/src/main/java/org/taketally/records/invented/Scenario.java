package org.taketally.records.invented;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/**
 * What a circle did, apart from how well its grafts took (that is {@link Truth}).
 *
 * @param folder folder of the data set, also its name
 * @param prefix beginning of each record's name
 * @param seed seed of everything drawn
 * @param seasons seasons in order
 * @param habits how budwood is cut, kept and used
 * @param traps what makes the raw numbers misleading
 */
record Scenario(
    String folder, String prefix, long seed, List<SeasonPlan> seasons, Habits habits, Traps traps) {

  /**
   * One season.
   *
   * @param name the season
   * @param firstDay first day of grafting
   * @param days length of the grafting season
   * @param sessions grafting sessions, all sites together
   * @param batches whether the sheet has one row per batch rather than per graft
   */
  record SeasonPlan(String name, LocalDate firstDay, int days, int sessions, boolean batches) {}

  /**
   * How wood is cut, kept and joined.
   *
   * @param methods weight of each method
   * @param storage weight of each range of days in the cool box
   * @param budStages weights of the stages at the start and at the end of the season
   * @param storageTempC range of the cool box, half degrees
   * @param lotsPerBatchSession cultivars of a session kept as batches
   * @param lotsPerSingleSession cultivars of a session kept graft by graft
   */
  record Habits(
      Map<String, Double> methods,
      Map<DayRange, Double> storage,
      Map<String, StageWeights> budStages,
      DayRange storageTempC,
      int lotsPerBatchSession,
      int lotsPerSingleSession) {}

  /** Whole numbers from low to high, both included. */
  record DayRange(int low, int high) {}

  /** Weight of a bud stage on the first and the last day of a season. */
  record StageWeights(double first, double last) {
    double at(double progress) {
      return first + (last - first) * progress;
    }
  }

  /**
   * What makes raw numbers misleading.
   *
   * @param novice grafter who comes late and grafts mostly one cultivar, or empty
   * @param noviceCultivar that cultivar
   * @param noviceSeasons seasons of the novice
   * @param hotWeekStart first of seven hot days, or null
   * @param hotWeekCultivars cultivars grafted mostly in that week
   */
  record Traps(
      String novice,
      String noviceCultivar,
      List<String> noviceSeasons,
      LocalDate hotWeekStart,
      List<String> hotWeekCultivars) {

    boolean hot(LocalDate date) {
      return hotWeekStart != null
          && !date.isBefore(hotWeekStart)
          && date.isBefore(hotWeekStart.plusDays(7));
    }
  }
}
