package org.taketally.checks;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Every published answer with the way we compute it, or none yet. */
final class PublishedChecks {

  /** Where our values come from; add a line to add a source. */
  static final List<CheckSource> SOURCES =
      List.of(
          new SingleProportionChecks(),
          new TwoProportionChecks(),
          new StratifiedChecks(),
          new EquivalenceChecks(),
          new SampleSizeChecks(),
          new TableChecks(),
          new SurvivalChecks(),
          new GroupedTimeChecks(),
          new FixedModelChecks(),
          new ShrinkageChecks(),
          new DesignChecks(),
          new PlanAndWatchChecks(),
          new SeedsChecks(),
          new MixedModelChecks(),
          new HickoryModelChecks(),
          new HospitalChecks());

  private final Map<String, Check> checks = new LinkedHashMap<>();

  private PublishedChecks() {
    for (PublishedAnswer answer : PublishedAnswer.all()) {
      if (checks.put(answer.key(), new Check(answer)) != null) {
        throw new IllegalStateException("answers.csv has " + answer.key() + " twice");
      }
    }
  }

  /** All answers, those of all sources with their computation. */
  static PublishedChecks withAllSources() {
    PublishedChecks checks = new PublishedChecks();
    SOURCES.forEach(source -> source.addTo(checks));
    return checks;
  }

  /**
   * The check of one answer, to say how it is computed.
   *
   * @param example as in answers.csv
   * @param quantity as in answers.csv
   * @return the check, to be told more
   * @throws IllegalArgumentException if there is no such row, or it has its computation already
   */
  Check check(String example, String quantity) {
    Check check = checks.get(example + " | " + quantity);
    if (check == null) {
      throw new IllegalArgumentException(
          "answers.csv has no row with example \"%s\" and quantity \"%s\""
              .formatted(example, quantity));
    }
    if (check.isComputed()) {
      throw new IllegalArgumentException(
          "%s has its computation already".formatted(check.answer().key()));
    }
    return check;
  }

  /** In the order of answers.csv. */
  Collection<Check> all() {
    return checks.values();
  }
}
