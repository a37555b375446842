package org.taketally.records.invented;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.records.invented.Scenario.SeasonPlan;
import org.taketally.records.invented.Scenario.StageWeights;

/** Who grafts where on which day, and with what wood. */
final class SessionPlanner {

  private static final int NOVICE_EVERY = 8;
  private static final int NOVICE_OTHER_WOOD = 3;
  private static final int SITE_CHANGES_PERCENT = 25;

  private final Scenario scenario;
  private final Truth truth;
  private final Draw draw;
  private final List<String> grafters;
  private final List<String> cultivarsLeft = new ArrayList<>();

  SessionPlanner(Scenario scenario, Truth truth, Draw draw) {
    this.scenario = scenario;
    this.truth = truth;
    this.draw = draw;
    grafters = new ArrayList<>(truth.levels("grafter"));
    grafters.remove(scenario.traps().novice());
  }

  /** Sessions of a season in order of time. */
  List<Session> sessions(SeasonPlan plan) {
    List<Session> sessions = new ArrayList<>();
    List<String> hands = List.of();
    for (int i = 0; i < plan.sessions(); i++) {
      if (i % grafters.size() == 0) {
        hands = draw.shuffled(grafters);
      }
      boolean novice =
          scenario.traps().noviceSeasons().contains(plan.name())
              && i % NOVICE_EVERY == NOVICE_EVERY - 1;
      String grafter = novice ? scenario.traps().novice() : hands.get(i % grafters.size());
      sessions.add(session(plan, grafter, (i + 0.5) / plan.sessions()));
    }
    return sessions;
  }

  private Session session(SeasonPlan plan, String grafter, double progress) {
    LocalDate date = plan.firstDay().plusDays((long) (progress * plan.days()));
    int air = scenario.traps().hot(date) ? draw.between(37, 40) : draw.between(19, 27);
    return new Session(plan.name(), site(grafter), grafter, date, progress, air);
  }

  private String site(String grafter) {
    List<String> sites = truth.levels("site");
    if (draw.chance(SITE_CHANGES_PERCENT / 100.0)) {
      return draw.oneOf(sites);
    }
    return sites.get(truth.levels("grafter").indexOf(grafter) % sites.size());
  }

  /** The wood a session uses. */
  List<CutWood> woods(Session session, int count) {
    List<CutWood> woods = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      woods.add(wood(session, cultivar(session, i), "ABCD".substring(i, i + 1)));
    }
    return woods;
  }

  private String cultivar(Session session, int place) {
    Scenario.Traps traps = scenario.traps();
    if (session.grafter().equals(traps.novice()) && place != NOVICE_OTHER_WOOD) {
      return traps.noviceCultivar();
    }
    if (traps.hot(session.date())) {
      return traps.hotWeekCultivars().get(place % traps.hotWeekCultivars().size());
    }
    if (cultivarsLeft.isEmpty()) {
      cultivarsLeft.addAll(draw.shuffled(truth.levels("cultivar")));
    }
    return cultivarsLeft.remove(cultivarsLeft.size() - 1);
  }

  private CutWood wood(Session session, String cultivar, String block) {
    Scenario.Habits habits = scenario.habits();
    Scenario.DayRange stored = draw.weighted(habits.storage());
    Scenario.DayRange halfDegrees = habits.storageTempC();
    return new CutWood(
        session,
        block,
        cultivar,
        draw.weighted(habits.methods()),
        budStage(session.progress()),
        draw.between(stored.low(), stored.high()),
        draw.between(halfDegrees.low(), halfDegrees.high()) / 2.0,
        draw.chance(0.88) ? "moist" : "dry");
  }

  private String budStage(double progress) {
    Map<String, Double> weights = new LinkedHashMap<>();
    for (Map.Entry<String, StageWeights> stage : scenario.habits().budStages().entrySet()) {
      weights.put(stage.getKey(), stage.getValue().at(progress));
    }
    return draw.weighted(weights);
  }
}
