package org.taketally.answers.effects;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.adjusted.DrawSummary;
import org.taketally.answers.adjusted.LevelSubstitution;
import org.taketally.answers.adjusted.MarginalTakes;
import org.taketally.answers.adjusted.WithinGroups;
import org.taketally.answers.adjusted.WithinGroups.Group;
import org.taketally.answers.adjusted.WithinGroups.Way;
import org.taketally.cells.Factor;
import org.taketally.model.CannotFit;
import org.taketally.model.FitOptions;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.records.columns.RecordColumn;

/**
 * Cultivars once more, compared within the hands, days, seasons and sites that used them unevenly:
 * what a beginner grafted, or what came on bad days, must not pass for a hard cultivar.
 *
 * <p>In the fit itself cultivars and hands both vary around a common mean, which shares what goes
 * with both between them. Here cultivars are adjusted for, and compared by {@link WithinGroups}.
 * Draws have spreads at their estimates: it is a second look.
 */
final class CultivarsWithin {

  private static final String CULTIVAR = RecordColumn.CULTIVAR.columnName();

  /** So many cultivars are adjusted for one by one, in as many columns a group. */
  private static final int MOST_CULTIVARS = 30;

  private final TakeFit fit;
  private final AnswerOptions options;

  CultivarsWithin(TakeFit fit, AnswerOptions options) {
    this.fit = fit;
    this.options = options;
  }

  /** Empty where all groups used cultivars as evenly as by lot, or that can't be worked out. */
  Optional<Difficulty.Within> takes() {
    boolean possible =
        !fit.isLarge()
            && LevelSubstitution.varies(fit, CULTIVAR)
            && fit.cells().findFactor(CULTIVAR).map(Factor::size).orElse(0) <= MOST_CULTIVARS;
    if (!possible) {
      return Optional.empty();
    }
    WithinGroups groups = WithinGroups.of(fit.cells(), asked());
    List<String> uneven =
        groups.groups().stream()
            .filter(group -> group.way() == Way.SHARES || group.way() == Way.LEVELS)
            .map(Group::column)
            .toList();
    return uneven.isEmpty() ? Optional.empty() : takes(allVarying(groups.model()), uneven);
  }

  /** Combinations such as beds of a site, which were left out while groups were decided. */
  private TakeModel allVarying(TakeModel model) {
    TakeModel all = model;
    for (List<String> parts : combinations().values()) {
      all = all.varyTogether(parts.get(0), parts.get(1));
    }
    return all;
  }

  private Map<String, List<String>> combinations() {
    Map<String, List<String>> found = new LinkedHashMap<>(fit.model().together());
    found.keySet().retainAll(fit.model().varying());
    return found;
  }

  private Optional<Difficulty.Within> takes(TakeModel model, List<String> uneven) {
    try {
      TakeFit again =
          model.fitNear(fit, fit.cells(), FitOptions.defaults().withExpectedInformation());
      MarginalTakes averaging = MarginalTakes.atEstimates(again, options);
      if (!averaging.knows(CULTIVAR)) {
        return Optional.empty();
      }
      double[][] takes = averaging.takes(CULTIVAR);
      List<String> levels = averaging.levels(CULTIVAR);
      Map<String, Estimate> byCultivar = new LinkedHashMap<>();
      for (int l = 0; l < levels.size(); l++) {
        byCultivar.put(
            levels.get(l), DrawSummary.estimate(DrawSummary.column(takes, l), options.coverage()));
      }
      return Optional.of(new Difficulty.Within(uneven, byCultivar));
    } catch (CannotFit cannot) {
      return Optional.empty();
    }
  }

  /** The fit's model with cultivars adjusted for, and asked about. */
  private TakeModel asked() {
    TakeModel asked = TakeModel.of(fit.model().asking(CULTIVAR)).without(CULTIVAR);
    for (String combination : combinations().keySet()) {
      asked = asked.without(combination);
    }
    return asked.adjustFor(CULTIVAR).compare(CULTIVAR);
  }
}
