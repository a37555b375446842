package org.taketally.checks;

import java.util.stream.IntStream;
import org.taketally.answers.counts.Equivalence;
import org.taketally.answers.counts.ExactEquivalence;
import org.taketally.answers.counts.TakeCount;

/** Two one-sided tests: one rate against two limits. */
final class EquivalenceChecks implements CheckSource {

  @Override
  public void addTo(PublishedChecks checks) {
    Equivalence hair = Equivalence.ofRate(new TakeCount(228, 762), 0.18, 0.38, 0.05);
    String sas = "equivalence_one_sample_sas";
    checks.check(sas, "z lower (vs 0.18)").ours(() -> new double[] {hair.zLow()});
    checks.check(sas, "z upper (vs 0.38)").ours(() -> new double[] {hair.zHigh()});
    checks
        .check(sas, "90% Wald CI")
        .ours(() -> new double[] {hair.interval().low(), hair.interval().high()});

    String pass = "equivalence_binomial_power_pass";
    ExactEquivalence five = ExactEquivalence.of(500, 0.5, 0.7, 0.05);
    checks
        .check(pass, "exact TOST rejection interval, n=500, margins 0.5-0.7, alpha 0.05")
        .ours(() -> new double[] {five.lowest(), five.highest()});
    checks
        .check(pass, "power at p=0.60,0.61,...,0.69")
        .ours(() -> IntStream.range(60, 70).mapToDouble(p -> five.power(p / 100.0)).toArray())
        .withoutReference("other program's values are the same");
    checks
        .check(pass, "margins 0.4-0.6, true 0.5, n=20,40,...,200")
        .ours(
            () ->
                IntStream.rangeClosed(1, 10)
                    .mapToDouble(i -> ExactEquivalence.of(20 * i, 0.4, 0.6, 0.05).power(0.5))
                    .toArray())
        .withoutReference("other program's values are the same");
  }
}
