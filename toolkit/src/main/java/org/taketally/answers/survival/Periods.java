package org.taketally.answers.survival;

import java.util.ArrayList;
import java.util.List;
import org.taketally.answers.survival.HazardRegression.Exposure;

/**
 * Periods between looks, each from just after the end of the one before to its own end. A loss
 * belongs to the period in which it was found; a graft last seen alive counts for the periods it
 * went through whole.
 *
 * @param ends last day of each period, rising, above 0
 */
public record Periods(List<Double> ends) {

  public Periods {
    ends = List.copyOf(ends);
    double before = 0;
    for (double end : ends) {
      if (!(end > before)) {
        throw new IllegalArgumentException("period ends must rise from above 0, got " + ends);
      }
      before = end;
    }
  }

  /**
   * Periods that end on days losses were found; if there are too many such days, on those that
   * share the losses out most evenly.
   *
   * @param grafts with at least one loss after day 0
   * @param most periods wanted at most, 1 or more
   * @return periods up to the last loss
   */
  public static Periods fromLosses(List<FollowUp> grafts, int most) {
    List<FollowUp> losses =
        grafts.stream()
            .filter(graft -> graft.lost() && graft.days() > 0)
            .sorted((a, b) -> Double.compare(a.days(), b.days()))
            .toList();
    long total = losses.stream().mapToLong(FollowUp::grafts).sum();
    List<Double> days = losses.stream().map(FollowUp::days).distinct().toList();
    if (days.size() <= most) {
      return new Periods(days);
    }
    List<Double> ends = new ArrayList<>();
    long soFar = 0;
    for (int i = 0; i < losses.size(); i++) {
      soFar += losses.get(i).grafts();
      boolean dayIsOver = i + 1 == losses.size() || losses.get(i + 1).days() > losses.get(i).days();
      if (dayIsOver && soFar * most >= total * (ends.size() + 1L)) {
        ends.add(losses.get(i).days());
      }
    }
    return new Periods(ends);
  }

  /**
   * Grafts at risk and lost in each period.
   *
   * @param grafts grafts with the same values
   * @param values their values
   * @return one per period, from period 0
   * @throws IllegalArgumentException if a graft was lost after the last period
   */
  public List<Exposure> exposures(List<FollowUp> grafts, double... values) {
    long[] atRisk = new long[ends.size()];
    long[] lost = new long[ends.size()];
    for (FollowUp graft : grafts) {
      int whole = 0;
      while (whole < ends.size() && ends.get(whole) <= graft.days()) {
        whole++;
      }
      int place = whole > 0 && ends.get(whole - 1) == graft.days() ? whole - 1 : whole;
      if (graft.lost() && place == ends.size()) {
        throw new IllegalArgumentException(
            "a graft was lost on day %s, after the last period (day %s)"
                .formatted(graft.days(), ends.isEmpty() ? 0.0 : ends.get(ends.size() - 1)));
      }
      int last = graft.lost() ? place : whole - 1;
      for (int p = firstWhole(graft.from()); p <= last; p++) {
        atRisk[p] += graft.grafts();
      }
      if (graft.lost()) {
        lost[place] += graft.grafts();
      }
    }
    List<Exposure> exposures = new ArrayList<>();
    for (int p = 0; p < ends.size(); p++) {
      exposures.add(new Exposure(p, values, atRisk[p], lost[p]));
    }
    return exposures;
  }

  /** The first period that begins on a day or after it. */
  private int firstWhole(double day) {
    int first = 0;
    while (day > 0 && first < ends.size() && (first == 0 ? 0 : ends.get(first - 1)) < day) {
      first++;
    }
    return first;
  }
}
