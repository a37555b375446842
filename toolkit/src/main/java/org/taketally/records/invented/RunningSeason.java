package org.taketally.records.invented;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.records.invented.GraftRow.Graft;
import org.taketally.records.invented.Scenario.SeasonPlan;

/**
 * The season that runs now, after the avocado records: two things go wrong in it, a fridge batch of
 * wood and a hot week, each by a share of the takes lost that the truth states.
 *
 * <p>Wood is kept in fridge batches: each serves two sessions, and what is left of it the next two.
 */
final class RunningSeason {

  private static final int SESSIONS_PER_BATCH = 2;
  private static final String LEFTOVERS = "D";
  private static final int HOT_DAYS = 7;

  private final Truth own = Truth.bundled(Scenarios.RUNNING);
  private final Draw draw;
  private final LocalDate hotWeek;
  private final Map<String, String> batches = new LinkedHashMap<>();

  private RunningSeason(long seed) {
    this.draw = new Draw(seed + 2);
    this.hotWeek = day("hot_week");
  }

  static Map<String, String> files(long seed) {
    RunningSeason season = new RunningSeason(seed);
    LocalDate today = season.day("today");
    List<GraftRow> rows = season.spoiled(season.grafted(seed));
    return Map.of("grafts-2026.csv", RecordSheets.running(rows, season.batches, today));
  }

  /** A day the truth gives by month and day of 2026. */
  private LocalDate day(String component) {
    return LocalDate.of(
        2026, (int) own.value(component, "month"), (int) own.value(component, "day"));
  }

  /** Rows of the last season, after all earlier ones, so that pairings stay what they were. */
  private List<GraftRow> grafted(long seed) {
    Scenario scenario = Scenarios.running(seed);
    Grafting grafting = new Grafting(scenario, Truth.bundled(scenario.folder()).and(own));
    List<GraftRow> rows = List.of();
    for (SeasonPlan plan : scenario.seasons()) {
      rows = grafting.rows(plan);
    }
    return rows;
  }

  private List<GraftRow> spoiled(List<GraftRow> rows) {
    List<GraftRow> spoiled = new ArrayList<>();
    List<Session> sessions = rows.stream().map(row -> row.wood().session()).distinct().toList();
    for (GraftRow row : rows) {
      Session session = row.wood().session();
      int pair = sessions.indexOf(session) / SESSIONS_PER_BATCH;
      boolean left = row.wood().block().equals(LEFTOVERS);
      String batch = "F%02d".formatted(left ? Math.max(1, pair) : pair + 1);
      batches.put(row.record(), batch);
      boolean hot =
          !session.date().isBefore(hotWeek) && session.date().isBefore(hotWeek.plusDays(HOT_DAYS));
      double lost = own.valueOrZero("fridge_batch", batch);
      double heat = hot ? own.value("hot_week", "effect") : 0;
      spoiled.add(spoiled(hot ? hot(row) : row, lost, heat));
    }
    return spoiled;
  }

  private GraftRow hot(GraftRow row) {
    CutWood wood = row.wood();
    Session session = wood.session();
    Session hot =
        new Session(
            session.season(),
            session.site(),
            session.grafter(),
            session.date(),
            session.progress(),
            session.airTempC() + 14);
    return with(
        row,
        new CutWood(
            hot,
            wood.block(),
            wood.cultivar(),
            wood.method(),
            wood.budStage(),
            wood.storageDays(),
            wood.storageTempC(),
            wood.kept()),
        row.grafts(),
        row.failureCause());
  }

  /** Takes lost to the batch or to the heat; drawn for every graft, so that draws stay in step. */
  private GraftRow spoiled(GraftRow row, double batch, double heat) {
    Graft graft = row.grafts().get(0);
    boolean dried = draw.chance(batch);
    boolean burnt = draw.chance(heat);
    if (row.takes() == 0 || !(dried || burnt)) {
      return row;
    }
    Graft failed =
        new Graft(graft.scionMm(), graft.stockMm(), graft.cambium(), 0, graft.firstSeen());
    return with(row, row.wood(), List.of(failed), dried ? "dried-scion" : "heat");
  }

  private static GraftRow with(GraftRow row, CutWood wood, List<Graft> grafts, String cause) {
    return new GraftRow(
        row.record(),
        wood,
        row.rootstock(),
        row.condition(),
        grafts,
        row.looks(),
        row.labelLost(),
        cause);
  }
}
