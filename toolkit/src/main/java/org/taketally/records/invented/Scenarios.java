package org.taketally.records.invented;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.records.invented.Scenario.DayRange;
import org.taketally.records.invented.Scenario.Habits;
import org.taketally.records.invented.Scenario.SeasonPlan;
import org.taketally.records.invented.Scenario.StageWeights;
import org.taketally.records.invented.Scenario.Traps;

/** The two seasons' stories of the circle: avocado in the open, walnut at the bench. */
final class Scenarios {

  static final String AVOCADO = "halden-bay-avocado";
  static final String RUNNING = "halden-bay-running-season";
  static final String WALNUT = "halden-bay-walnut";

  private Scenarios() {}

  static Scenario avocado(long seed) {
    return new Scenario(
        AVOCADO,
        "A",
        seed,
        List.of(
            new SeasonPlan("2022", LocalDate.of(2022, 2, 26), 72, 33, true),
            new SeasonPlan("2023", LocalDate.of(2023, 2, 25), 72, 33, true),
            new SeasonPlan("2024", LocalDate.of(2024, 2, 24), 72, 33, false),
            new SeasonPlan("2025", LocalDate.of(2025, 3, 1), 72, 33, false)),
        avocadoHabits(),
        new Traps(
            "Kit",
            "Corvane",
            List.of("2024", "2025"),
            LocalDate.of(2023, 3, 19),
            List.of("Larkmoor", "Selwick")));
  }

  /** The avocado seasons, and the one that runs now. */
  static Scenario running(long seed) {
    Scenario past = avocado(seed);
    List<SeasonPlan> seasons = new ArrayList<>(past.seasons());
    seasons.add(new SeasonPlan("2026", LocalDate.of(2026, 2, 28), 72, 33, false));
    return new Scenario(past.folder(), past.prefix(), seed, seasons, past.habits(), past.traps());
  }

  private static Habits avocadoHabits() {
    return new Habits(
        ordered("cleft", 0.65, "side-veneer", 0.20, "whip-and-tongue", 0.15),
        ordered(new DayRange(0, 2), 0.45, new DayRange(3, 6), 0.35, new DayRange(7, 12), 0.20),
        ordered(
            "dormant", new StageWeights(0.50, 0.15),
            "swelling", new StageWeights(0.42, 0.55),
            "flushed", new StageWeights(0.08, 0.30)),
        new DayRange(10, 23),
        2,
        4);
  }

  static Scenario walnut(long seed) {
    return new Scenario(
        WALNUT,
        "W",
        seed,
        List.of(
            new SeasonPlan("2023", LocalDate.of(2023, 2, 4), 56, 22, true),
            new SeasonPlan("2024", LocalDate.of(2024, 2, 3), 56, 22, true),
            new SeasonPlan("2025", LocalDate.of(2025, 2, 1), 56, 22, false)),
        walnutHabits(),
        new Traps("", "", List.of(), null, List.of()));
  }

  private static Habits walnutHabits() {
    return new Habits(
        ordered("whip-and-tongue", 0.60, "saddle", 0.25, "omega", 0.15),
        ordered(
            new DayRange(14, 60), 0.60, new DayRange(61, 90), 0.25, new DayRange(91, 130), 0.15),
        ordered(
            "dormant", new StageWeights(0.97, 0.70),
            "swelling", new StageWeights(0.03, 0.30)),
        new DayRange(0, 7),
        3,
        4);
  }

  private static <K, V> Map<K, V> ordered(K k1, V v1, K k2, V v2) {
    Map<K, V> map = new LinkedHashMap<>();
    map.put(k1, v1);
    map.put(k2, v2);
    return map;
  }

  private static <K, V> Map<K, V> ordered(K k1, V v1, K k2, V v2, K k3, V v3) {
    Map<K, V> map = ordered(k1, v1, k2, v2);
    map.put(k3, v3);
    return map;
  }
}
