package org.taketally.checks;

import org.taketally.answers.counts.DifferencePower;
import org.taketally.answers.counts.MarginPower;
import org.taketally.answers.counts.MarginPower.Question;

/** Grafts per arm and power: help-page examples of R and epiR, and values quoted by statsmodels. */
final class SampleSizeChecks implements CheckSource {

  private static final DifferencePower TWO_SIDED = DifferencePower.twoSided(0.05);
  private static final DifferencePower ONE_SIDED = DifferencePower.oneSided(0.05);
  private static final String OTHER_TAIL = "R leaves the small other tail out by default";

  @Override
  public void addTo(PublishedChecks checks) {
    addMargins(checks);
    addDifferences(checks);
    addMoreDifferences(checks);
  }

  private static void addMargins(PublishedChecks checks) {
    String example = "noninferiority_sample_size";
    MarginPower notWorse = new MarginPower(Question.NOT_WORSE, 0.10, 0.05);
    MarginPower better = new MarginPower(Question.BETTER, 0.05, 0.05);
    checks
        .check(example, "noninferiority 0.85 v 0.65 delta 0.10, one-sided 5%, 80%: n per arm")
        .ours(() -> new double[] {Math.ceil(notWorse.grafts(0.85, 0.65, 0.8))});
    checks
        .check(example, "same, 20 per arm: power")
        .ours(() -> new double[] {notWorse.power(0.85, 0.65, 20)});
    checks
        .check(example, "superiority margin 0.05, 0.85 v 0.65: n per arm")
        .ours(() -> new double[] {Math.ceil(better.grafts(0.85, 0.65, 0.8))});
  }

  private static void addDifferences(PublishedChecks checks) {
    String example = "power_two_proportions";
    checks
        .check(example, "n=50, 0.50 v 0.75: power")
        .ours(() -> new double[] {TWO_SIDED.power(0.5, 0.75, 50)})
        .referenceWithin(2e-6, OTHER_TAIL);
    checks
        .check(example, "0.50 v 0.75 power 0.90: n per arm")
        .ours(() -> new double[] {TWO_SIDED.grafts(0.5, 0.75, 0.9)})
        .referenceWithin(2e-5, OTHER_TAIL);
    checks
        .check(example, "n=50 p1=0.5 power 0.90: p2")
        .ours(() -> new double[] {TWO_SIDED.higherTakeFound(0.5, 50, 0.9)})
        .referenceWithin(
            2e-5, "R searches to 1e-4 by default; with tol = 1e-12 it gives 0.8026306");
    checks
        .check(example, "same n, more digits")
        .ours(() -> new double[] {TWO_SIDED.grafts(0.5, 0.75, 0.9)})
        .referenceWithin(2e-5, OTHER_TAIL);
  }

  private static void addMoreDifferences(PublishedChecks checks) {
    String example = "power_two_proportions";
    checks
        .check(example, "one-sided 0.50 v 0.75 power 0.90: n")
        .ours(() -> new double[] {ONE_SIDED.grafts(0.5, 0.75, 0.9)})
        .referenceWithin(
            1e-5, "R searches to 1e-4 by default; with tol = 1e-12 it gives 62.335508");
    checks
        .check(example, "Stata example 0.001 v 0.015 n=550: power")
        .ours(() -> new double[] {TWO_SIDED.power(0.001, 0.015, 550)})
        .referenceWithin(3e-6, OTHER_TAIL);
    checks
        .check(example, "0.50 v 0.65 power 0.50: n")
        .ours(() -> new double[] {TWO_SIDED.grafts(0.5, 0.65, 0.5)})
        .referenceWithin(0.008, OTHER_TAIL);
    checks
        .check(example, "0.20 v 0.10, n1=154, ratio 2 (Stata): power")
        .ours(() -> new double[] {TWO_SIDED.withRatio(2).power(0.1, 0.2, 154)})
        .withoutReference("the lot of 154 is the one with 0.10, that of 308 the one with 0.20");
    checks
        .check(example, "prevalence 0.30 v 0.32 one-sided power 0.90: n per arm")
        .notOffered(
            "the source takes 0.30 as known, works out the size of one sample (4,567) and halves"
                + " it; two lots, neither known beforehand, need "
                + (long) Math.ceil(ONE_SIDED.grafts(0.3, 0.32, 0.9))
                + " each");
  }
}
