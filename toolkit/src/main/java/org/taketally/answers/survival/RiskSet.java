package org.taketally.answers.survival;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Grafts at risk and lost, by name of lot, on one day with losses within one stratum.
 *
 * @param day the day
 * @param atRisk grafts alive and looked at up to that day, by lot
 * @param lost grafts found lost that day, by lot
 * @param aliveBefore estimated share of the whole stratum alive before that day
 */
record RiskSet(double day, long[] atRisk, long[] lost, double aliveBefore) {

  /** Names of lots in order of appearance. */
  static List<String> names(List<Watched> lots) {
    LinkedHashSet<String> names = new LinkedHashSet<>();
    lots.forEach(lot -> names.add(lot.name()));
    return List.copyOf(names);
  }

  /** All days with losses in all strata. */
  static List<RiskSet> of(List<Watched> lots) {
    List<String> names = names(lots);
    TreeMap<String, List<Watched>> strata = new TreeMap<>();
    lots.forEach(lot -> strata.computeIfAbsent(lot.stratum(), s -> new ArrayList<>()).add(lot));
    List<RiskSet> sets = new ArrayList<>();
    strata.values().forEach(stratum -> addStratum(sets, stratum, names));
    return sets;
  }

  private static void addStratum(List<RiskSet> sets, List<Watched> stratum, List<String> names) {
    TreeSet<Double> days = new TreeSet<>();
    for (Watched lot : stratum) {
      lot.grafts().stream().filter(FollowUp::lost).forEach(graft -> days.add(graft.days()));
    }
    double alive = 1;
    for (double day : days) {
      long[] atRisk = new long[names.size()];
      long[] lost = new long[names.size()];
      for (Watched lot : stratum) {
        int place = names.indexOf(lot.name());
        for (FollowUp graft : lot.grafts()) {
          atRisk[place] += graft.atRisk(day) ? graft.grafts() : 0;
          lost[place] += graft.lost() && graft.days() == day ? graft.grafts() : 0;
        }
      }
      RiskSet set = new RiskSet(day, atRisk, lost, alive);
      sets.add(set);
      alive *= 1 - (double) set.lostTotal() / set.atRiskTotal();
    }
  }

  long atRiskTotal() {
    return Arrays.stream(atRisk).sum();
  }

  long lostTotal() {
    return Arrays.stream(lost).sum();
  }
}
