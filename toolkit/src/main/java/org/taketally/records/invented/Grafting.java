package org.taketally.records.invented;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.records.invented.GraftRow.Graft;
import org.taketally.records.invented.Scenario.SeasonPlan;
import org.taketally.terms.Logit;

/** Makes the rows of a season: every graft gets its fate from the truth. */
final class Grafting {

  private static final Map<String, Double> CAMBIUM = new LinkedHashMap<>();

  static {
    CAMBIUM.put("both-sides", 0.60);
    CAMBIUM.put("one-side", 0.32);
    CAMBIUM.put("centred", 0.08);
  }

  private final Scenario scenario;
  private final Truth truth;
  private final Draw draw;
  private final SessionPlanner planner;
  private final FailureCauses causes;
  private final Map<String, Double> pairings = new LinkedHashMap<>();
  private final Map<String, Double> days = new LinkedHashMap<>();

  Grafting(Scenario scenario, Truth truth) {
    this.scenario = scenario;
    this.truth = truth;
    draw = new Draw(scenario.seed());
    planner = new SessionPlanner(scenario, truth, draw);
    causes = new FailureCauses(scenario.traps(), new Draw(scenario.seed() + 1));
  }

  /** All rows of a season, in order of time. */
  List<GraftRow> rows(SeasonPlan plan) {
    List<GraftRow> rows = new ArrayList<>();
    for (Session session : planner.sessions(plan)) {
      int woods =
          plan.batches()
              ? scenario.habits().lotsPerBatchSession()
              : scenario.habits().lotsPerSingleSession();
      List<LocalDate> looks = looks(session.date());
      for (CutWood wood : planner.woods(session, woods)) {
        addRows(rows, plan, wood, looks);
      }
    }
    return rows;
  }

  private List<LocalDate> looks(LocalDate grafted) {
    return List.of(
        grafted.plusDays(draw.between(36, 42)),
        grafted.plusDays(draw.between(62, 70)),
        grafted.plusDays(draw.between(92, 100)));
  }

  private void addRows(List<GraftRow> rows, SeasonPlan plan, CutWood wood, List<LocalDate> looks) {
    for (String rootstock : draw.shuffled(truth.levels("rootstock"))) {
      if (draw.chance(0.06)) {
        continue;
      }
      int count = plan.batches() ? draw.between(2, 5) : draw.between(1, 2);
      int perRow = plan.batches() ? count : 1;
      for (int made = 0; made < count; made += perRow) {
        String name =
            "%s%s-%04d".formatted(scenario.prefix(), plan.name().substring(2), rows.size() + 1);
        rows.add(row(name, wood, rootstock, new Count(perRow, looks)));
      }
    }
  }

  private record Count(int grafts, List<LocalDate> looks) {}

  private GraftRow row(String name, CutWood wood, String rootstock, Count count) {
    boolean weak = draw.chance(truth.value("weak_share", rootstock));
    String condition = weak ? "weak" : "healthy";
    double logit = logit(wood, rootstock) + truth.value("stock_condition", condition);
    List<Graft> grafts = new ArrayList<>();
    for (int i = 0; i < count.grafts(); i++) {
      grafts.add(graft(logit, rootstock));
    }
    boolean lost = count.grafts() == 1 && draw.chance(0.008);
    String cause = lost ? "" : causes.of(wood.session(), weak, grafts);
    return new GraftRow(name, wood, rootstock, condition, grafts, count.looks(), lost, cause);
  }

  private double logit(CutWood wood, String rootstock) {
    Session session = wood.session();
    String pair = wood.cultivar() + " on " + rootstock;
    String day = session.site() + " " + session.date();
    return truth.value("baseline", "")
        + truth.value("cultivar", wood.cultivar())
        + truth.value("rootstock", rootstock)
        + truth.value("method", wood.method())
        + truth.value("bud_stage", wood.budStage())
        + truth.value("budwood_kept", wood.kept())
        + truth.value("grafter", session.grafter())
        + truth.value("site", session.site())
        + truth.value("season", session.season())
        + storage(wood.storageDays())
        + (scenario.traps().hot(session.date()) ? truth.value("hot_week", "effect") : 0)
        + pairings.computeIfAbsent(pair, p -> draw.normal(0, truth.value("pairing", "sd")))
        + days.computeIfAbsent(day, d -> draw.normal(0, truth.value("grafting_day", "sd")));
  }

  private double storage(int storageDays) {
    return truth.value("storage", "per_day")
        * Math.max(0, storageDays - truth.value("storage", "free_days"));
  }

  private Graft graft(double logit, String rootstock) {
    double stockMm = Math.round(draw.normal(8.5, 1.2) * 2) / 2.0;
    double scionMm = Math.round((stockMm + draw.normal(-0.5, 1.0)) * 2) / 2.0;
    String cambium = draw.weighted(CAMBIUM);
    double take = Logit.takeAlikeEverywhere(logit + truth.value("cambium_match", cambium));
    int lastAlive = draw.chance(take) ? 3 : lostAfter();
    int firstSeen = 1;
    if (draw.chance(truth.valueOrZero("slow_start", rootstock))) {
      firstSeen = draw.chance(0.15) ? 3 : 2;
    }
    return new Graft(scionMm, stockMm, cambium, lastAlive, firstSeen);
  }

  /** Last count at which a graft that fails in the end was still alive. */
  private int lostAfter() {
    if (!draw.chance(truth.value("late_loss", "share"))) {
      return 0;
    }
    return draw.chance(0.4) ? 2 : 1;
  }
}
