package org.taketally.checks;

import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.terms.Interval;

/** Newcombe (1998) Table I and the intervals of R's binom package. */
final class SingleProportionChecks implements CheckSource {

  private static final String EXAMPLE = "single_proportions";
  private static final double LEVEL = 0.95;

  /** One method of the printed table. */
  private interface Method {
    Interval interval(long takes, long grafts, double level);
  }

  @Override
  public void addTo(PublishedChecks checks) {
    for (String counts : new String[] {"18/20", "4/20", "4/200"}) {
      add(checks, counts, "Wilson", TakeRateInterval::wilson);
      add(checks, counts, "Clopper-Pearson", TakeRateInterval::clopperPearson);
      add(checks, counts, "Wilson with cc (prop.test)", TakeRateInterval::wilsonWithContinuity);
      add(checks, counts, "Agresti-Coull", TakeRateInterval::agrestiCoull);
    }
    for (String counts : new String[] {"81/263", "15/148", "0/20", "1/29"}) {
      add(checks, counts, "Wilson", TakeRateInterval::wilson);
    }
    add(checks, "81/263", "Clopper-Pearson", TakeRateInterval::clopperPearson);
  }

  private static void add(PublishedChecks checks, String counts, String name, Method method) {
    String[] parts = counts.split("/");
    checks
        .check(EXAMPLE, counts + " " + name)
        .ours(
            () -> {
              Interval interval =
                  method.interval(Long.parseLong(parts[0]), Long.parseLong(parts[1]), LEVEL);
              return new double[] {interval.low(), interval.high()};
            });
  }
}
