package org.taketally.answers.adjusted;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.taketally.answers.counts.CrossTabulation;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.CannotFit;
import org.taketally.model.FitOptions;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.records.columns.RecordColumn;

/**
 * A fit of the model asked for, or of the nearest one the records can carry: a column with a level
 * of which none or all took varies instead of being adjusted for, a curve with too few different
 * values is a line, a column that says the same as others is left out, and so are pairings where
 * too few cultivars stood on more than one rootstock. Each change is kept.
 *
 * @param fit the fit
 * @param changes what was changed, in order
 */
public record FallbackFit(TakeFit fit, List<ModelChange> changes) {

  /** Pairings beyond those that cultivars and rootstocks alone would make. */
  private static final int SPARE_PAIRINGS = 3;

  /** A spread of rows below this, in logits, counts as none. */
  private static final double NO_SCATTER = 1e-3;

  public static FallbackFit of(Cells cells, TakeModel asked) {
    WithinGroups within = WithinGroups.of(cells, asked);
    FallbackFit found = fitted(within.model(), model -> model.fit(cells), cells);
    return scatters(found.fit())
        ? found
        : fitted(
                TakeModel.of(found.fit().model()).without(Cells.BATCH_ROW),
                model -> model.fitNear(found.fit(), cells, FitOptions.defaults()),
                cells)
            .after(found.changes());
  }

  /** Rows of several grafts that scatter no more than chance are as good as their grafts. */
  private static boolean scatters(TakeFit fit) {
    return fit.varying().stream()
        .noneMatch(
            factor ->
                factor.factor().equals(Cells.BATCH_ROW) && factor.standardDeviation() < NO_SCATTER);
  }

  private FallbackFit after(List<ModelChange> earlier) {
    List<ModelChange> all = new ArrayList<>(earlier);
    all.addAll(changes);
    return new FallbackFit(fit, all);
  }

  private static FallbackFit fitted(
      TakeModel asked, Function<TakeModel, TakeFit> fitting, Cells cells) {
    List<ModelChange> changes = new ArrayList<>();
    TakeModel model = asked;
    if (asked.varying().contains(TakeModel.PAIRING) && sparePairings(cells) < SPARE_PAIRINGS) {
      model = model.without(TakeModel.PAIRING);
      changes.add(
          new ModelChange(ModelChange.Kind.PAIRINGS_LEFT_OUT, TakeModel.PAIRING, Optional.empty()));
    }
    for (int columns = asked.columns().size(); ; columns--) {
      try {
        return new FallbackFit(fitting.apply(model), List.copyOf(changes));
      } catch (CannotFit problem) {
        Optional<TakeModel> simpler = simpler(model, problem, changes);
        if (simpler.isEmpty() || columns == 0) {
          throw problem;
        }
        model = simpler.get();
      }
    }
  }

  private static Optional<TakeModel> simpler(
      TakeModel model, CannotFit problem, List<ModelChange> changes) {
    if (problem.columns().isEmpty()) {
      return Optional.empty();
    }
    String column = problem.columns().get(problem.columns().size() - 1);
    boolean levels = model.adjusted().contains(column);
    return switch (problem.reason()) {
      case SEPARATED -> {
        if (!levels) {
          yield Optional.empty();
        }
        changes.add(new ModelChange(ModelChange.Kind.VARIES_INSTEAD, column, Optional.of(problem)));
        yield Optional.of(varying(model, column));
      }
      case TOO_FEW_VALUES -> {
        changes.add(new ModelChange(ModelChange.Kind.LINE_INSTEAD, column, Optional.of(problem)));
        yield Optional.of(model.without(column).adjustFor(column));
      }
      case ALIASED -> {
        changes.add(new ModelChange(ModelChange.Kind.LEFT_OUT, column, Optional.of(problem)));
        yield Optional.of(model.without(column));
      }
      default -> Optional.empty();
    };
  }

  /** The question stays what it was. */
  private static TakeModel varying(TakeModel model, String column) {
    TakeModel changed = model.without(column).varyBy(column);
    return model.compared().filter(column::equals).isPresent() ? changed.compare(column) : changed;
  }

  /** Pairings made, less what cultivars and rootstocks would need to be linked at all. */
  private static int sparePairings(Cells cells) {
    Optional<Factor> cultivar = cells.findFactor(RecordColumn.CULTIVAR.columnName());
    Optional<Factor> rootstock = cells.findFactor(RecordColumn.ROOTSTOCK.columnName());
    if (cultivar.isEmpty() || rootstock.isEmpty()) {
      return SPARE_PAIRINGS;
    }
    CrossTabulation met = new CrossTabulation(cells, cultivar.get(), rootstock.get());
    return met.pairsSeen() - met.levelsSeen() - met.partnersSeen() + 1;
  }
}
