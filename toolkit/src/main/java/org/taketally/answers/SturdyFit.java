package org.taketally.answers;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.CannotFit;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;

/**
 * A fit of the model asked for, or of the nearest one the records can carry: a column with a level
 * of which none or all took varies instead of being adjusted for, a column that says the same as
 * others is left out, and so are pairings where too few cultivars stood on more than one rootstock.
 * Each change is said.
 *
 * @param fit the fit
 * @param changes what was changed, in sentences
 */
record SturdyFit(TakeFit fit, List<String> changes) {

  /** Pairings beyond those that cultivars and rootstocks alone would make. */
  private static final int SPARE_PAIRINGS = 3;

  static SturdyFit of(Cells cells, TakeModel asked) {
    List<String> changes = new ArrayList<>();
    TakeModel model = asked;
    if (asked.varying().contains(TakeModel.PAIRING) && sparePairings(cells) < SPARE_PAIRINGS) {
      model = model.without(TakeModel.PAIRING);
      changes.add(
          "Pairings were left out of the model: too few cultivars were grafted on more than one"
              + " rootstock to tell their effect from that of the rootstock.");
    }
    for (int columns = asked.columns().size(); ; columns--) {
      try {
        return new SturdyFit(model.fit(cells), List.copyOf(changes));
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
      TakeModel model, CannotFit problem, List<String> changes) {
    if (problem.columns().isEmpty()) {
      return Optional.empty();
    }
    String column = problem.columns().get(problem.columns().size() - 1);
    boolean levels = model.adjusted().contains(column);
    String why = Words.sentence(problem.getMessage()) + ".";
    return switch (problem.reason()) {
      case SEPARATED -> {
        if (!levels) {
          yield Optional.empty();
        }
        changes.add("%s Here it varies around a common mean instead.".formatted(why));
        yield Optional.of(varying(model, column));
      }
      case ALIASED -> {
        changes.add("%s Here it was left out.".formatted(why));
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
    Optional<Factor> cultivar = cells.findFactor("cultivar");
    Optional<Factor> rootstock = cells.findFactor("rootstock");
    if (cultivar.isEmpty() || rootstock.isEmpty()) {
      return SPARE_PAIRINGS;
    }
    Meetings met = new Meetings(cells, cultivar.get(), rootstock.get());
    return met.pairsSeen() - met.levelsSeen() - met.partnersSeen() + 1;
  }
}
