package org.taketally.checks;

import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeDifference;
import org.taketally.terms.Interval;

/** Newcombe (1998) Table II and example (d); Gart and Nam (1990). */
final class TwoProportionChecks implements CheckSource {

  private static final String EXAMPLE = "two_proportions_newcombe";
  private static final double LEVEL = 0.95;

  private interface Method {
    Interval interval(TakeCount first, TakeCount second, double level);
  }

  @Override
  public void addTo(PublishedChecks checks) {
    add(checks, "5/56-0/29", "Miettinen-Nurminen", TakeDifference::miettinenNurminen);
    add(checks, "5/56-0/29", "Mee", TakeDifference::mee);
    add(checks, "5/56-0/29", "Newcombe square-and-add", TakeDifference::newcombe);
    add(checks, "56/70-48/80", "Newcombe", TakeDifference::newcombe);
    add(checks, "56/70-48/80", "Wald", TakeDifference::wald);
    add(checks, "9/10-3/10", "Newcombe", TakeDifference::newcombe);
    add(checks, "6/7-2/7", "Newcombe", TakeDifference::newcombe);
    add(checks, "0/10-0/20", "Newcombe", TakeDifference::newcombe);
    add(checks, "0/10-0/10", "Newcombe", TakeDifference::newcombe);
    add(checks, "7/25-2/25", "Mee", TakeDifference::mee);
    add(checks, "7/25-2/25", "skewness-corrected score", TakeDifference::skewnessCorrected)
        .withoutReference("no other program's value at hand");
  }

  private static Check add(PublishedChecks checks, String counts, String name, Method method) {
    String[] lots = counts.split("-");
    return checks
        .check(EXAMPLE, counts + " " + name)
        .ours(
            () -> {
              Interval interval = method.interval(count(lots[0]), count(lots[1]), LEVEL);
              return new double[] {interval.low(), interval.high()};
            });
  }

  private static TakeCount count(String text) {
    String[] parts = text.split("/");
    return new TakeCount(Long.parseLong(parts[0]), Long.parseLong(parts[1]));
  }
}
