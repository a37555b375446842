package org.taketally.answers.verdict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.counts.TakeCounter;
import org.taketally.cells.Cells;
import org.taketally.model.TakeFit;
import org.taketally.records.columns.NameLikeness;

/**
 * Works out {@link PlannedContrasts}: by the same evidence and the same rules as a verdict, each
 * contrast judged by ranges that hold for all contrasts asked at once.
 */
public final class PlannedContrastsCalculator {

  private final MarginalTakes main;
  private final String factor;
  private final AnswerOptions options;

  private PlannedContrastsCalculator(MarginalTakes main, String factor, AnswerOptions options) {
    this.main = main;
    this.factor = factor;
    this.options = options;
  }

  /**
   * Judges contrasts between levels of a column.
   *
   * @param fit a fit in which the column is adjusted for or varies
   * @param factor column of the records
   * @param contrasts at least one, each name once
   * @param options margin, level, draws, seed
   * @return one result each
   * @throws IllegalArgumentException if the fit doesn't have the column or a level, naming the
   *     nearest
   */
  public static PlannedContrasts of(
      TakeFit fit, String factor, List<Contrast> contrasts, AnswerOptions options) {
    PlannedContrastsCalculator calculator =
        new PlannedContrastsCalculator(MarginalTakes.of(fit, options), factor, options);
    calculator.requireKnown(contrasts);
    return new PlannedContrasts(
        factor, calculator.results(contrasts), TakeCounter.all(fit.cells()), options);
  }

  private void requireKnown(List<Contrast> contrasts) {
    List<String> levels = main.levels(factor);
    List<String> names = new ArrayList<>();
    for (Contrast contrast : contrasts) {
      if (names.contains(contrast.name())) {
        throw new IllegalArgumentException(
            "two contrasts are called \"%s\"; give each a name of its own"
                .formatted(contrast.name()));
      }
      names.add(contrast.name());
      for (String level : contrast.weights().keySet()) {
        if (!levels.contains(level)) {
          throw unknown(level, levels);
        }
      }
    }
    if (names.isEmpty()) {
      throw new IllegalArgumentException("name at least one contrast");
    }
  }

  private IllegalArgumentException unknown(String level, List<String> levels) {
    Optional<String> near = NameLikeness.nearest(level, levels);
    return near.isPresent()
        ? new IllegalArgumentException(
            "no %s \"%s\" in this fit; did you mean \"%s\"?".formatted(factor, level, near.get()))
        : new IllegalArgumentException(
            "no %s \"%s\" in this fit; there are: %s"
                .formatted(factor, level, String.join(", ", levels)));
  }

  private List<PlannedContrasts.Result> results(List<Contrast> contrasts) {
    Confounding confounding = ComparableFit.confounding(main.fit().cells(), factor, options);
    Map<List<String>, List<Contrast>> byGroup = new LinkedHashMap<>();
    for (Contrast contrast : contrasts) {
      confounding.groups().stream()
          .map(Confounding.Group::levels)
          .filter(levels -> levels.containsAll(contrast.weights().keySet()))
          .findFirst()
          .ifPresent(group -> byGroup.computeIfAbsent(group, g -> new ArrayList<>()).add(contrast));
    }
    Map<Contrast, PlannedContrasts.Result> found = new LinkedHashMap<>();
    byGroup.forEach(
        (group, some) ->
            judge(some, ComparableFit.of(main, confounding, group, options).main(), found));
    return contrasts.stream()
        .map(contrast -> found.getOrDefault(contrast, entangled(contrast)))
        .toList();
  }

  private PlannedContrasts.Result entangled(Contrast contrast) {
    Cells cells = main.fit().cells();
    return new PlannedContrasts.Result(
        contrast,
        Verdict.ENTANGLED,
        Optional.empty(),
        0,
        TakeCounter.together(cells, factor, contrast.some()),
        TakeCounter.together(cells, factor, contrast.others()));
  }

  /** Contrasts within levels that can be compared. */
  private void judge(
      List<Contrast> contrasts,
      MarginalTakes comparable,
      Map<Contrast, PlannedContrasts.Result> found) {
    ContrastJudge judge = ContrastJudge.of(contrasts, comparable, factor, options);
    Cells cells = comparable.fit().cells();
    for (int k = 0; k < contrasts.size(); k++) {
      Contrast contrast = contrasts.get(k);
      found.put(
          contrast,
          new PlannedContrasts.Result(
              contrast,
              judge.verdict(k),
              Optional.of(new Estimate(judge.mean(k), judge.deciding(k))),
              judge.probabilityBeyondMargin(k),
              TakeCounter.together(cells, factor, contrast.some()),
              TakeCounter.together(cells, factor, contrast.others())));
    }
  }
}
