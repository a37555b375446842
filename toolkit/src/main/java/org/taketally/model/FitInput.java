package org.taketally.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.model.CannotFit.Reason;
import org.taketally.model.FitWarning.Kind;
import org.taketally.model.laplace.ModelData;
import org.taketally.model.laplace.SortedCells;
import org.taketally.model.laplace.TooManyLevels;
import org.taketally.model.numeric.Spline;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Plural;

/** From a model and cells to what the engine needs: usable cells, columns of X, levels in use. */
final class FitInput {

  /** Fewer levels than this say little about a spread; common practice, no source. */
  private static final int FEW = 5;

  private final ModelTerms model;
  private final Map<String, Long> leftOut = new LinkedHashMap<>();
  private final List<FitWarning> warnings = new ArrayList<>();
  private final Map<String, List<String>> levels = new LinkedHashMap<>();
  private final Map<String, WithinComparison.Unused> unusedWithin = new LinkedHashMap<>();
  private Cells cells;
  private TakeDesign design;
  private ModelData evidence;
  private SortedCells sorted;

  private FitInput(ModelTerms model, Cells cells) {
    this.model = model;
    this.cells = cells;
  }

  static FitInput of(ModelTerms model, Cells cells) {
    FitInput preparation = new FitInput(model, cells);
    preparation.addLevels();
    preparation.leaveOutIncomplete();
    preparation.refuseHopeless();
    preparation.build();
    return preparation;
  }

  ModelTerms model() {
    return model;
  }

  Cells cells() {
    return cells;
  }

  Map<String, Long> leftOut() {
    return leftOut;
  }

  List<FitWarning> warnings() {
    return warnings;
  }

  Map<String, List<String>> levels() {
    return levels;
  }

  Map<String, WithinComparison.Unused> unusedWithin() {
    return unusedWithin;
  }

  TakeDesign design() {
    return design;
  }

  ModelData evidence() {
    return evidence;
  }

  /** Worked out when first needed: the search, draws and refits all use it. */
  synchronized SortedCells sorted() {
    if (sorted == null) {
      try {
        sorted = new SortedCells(evidence);
      } catch (TooManyLevels tooMany) {
        throw new CannotFit(Reason.TOO_LARGE, List.of(), tooMany.getMessage());
      }
    }
    return sorted;
  }

  /** Numbers that name groups become levels, and columns that vary together one column. */
  private void addLevels() {
    model.varying().forEach(this::asLevels);
    model.within().forEach(this::asLevels);
    model
        .together()
        .forEach(
            (name, columns) -> {
              columns.forEach(this::asLevels);
              addTogether(name, columns.get(0), columns.get(1));
            });
    if (model.columns().contains(ModelTerms.PAIRING)) {
      addTogether(
          ModelTerms.PAIRING,
          RecordColumn.CULTIVAR.columnName(),
          RecordColumn.ROOTSTOCK.columnName());
    }
  }

  private void asLevels(String column) {
    if (cells.findFactor(column).isEmpty() && cells.findMeasure(column).isPresent()) {
      cells = cells.with(Factor.of(cells.measure(column)));
    }
  }

  private void addTogether(String name, String first, String second) {
    if (cells.findFactor(name).isEmpty()) {
      cells = cells.with(Combination.of(name, levelsOf(first), levelsOf(second)));
    }
  }

  private Factor levelsOf(String column) {
    return cells
        .findFactor(column)
        .orElseThrow(
            () ->
                new CannotFit(
                    Reason.WRONG_COLUMN,
                    List.of(column),
                    "%s can't vary: these records have no column of levels of that name; there are %s"
                        .formatted(column, cells.factors().stream().map(Factor::name).toList())));
  }

  private void leaveOutIncomplete() {
    boolean[] complete = new boolean[cells.size()];
    Arrays.fill(complete, true);
    for (String column : model.columns()) {
      long lost = 0;
      for (int i = 0; i < complete.length; i++) {
        if (missing(column, i)) {
          lost += cells.grafts(i);
          complete[i] = false;
        }
      }
      if (lost > 0) {
        leftOut.put(column, lost);
        warnings.add(
            new FitWarning(
                Kind.LEFT_OUT,
                column,
                "%,d of %s %s left out because %s wasn't recorded; record it, or leave the column out"
                    .formatted(
                        lost,
                        Plural.of(cells.graftsTotal(), "graft"),
                        lost == 1 ? "was" : "were",
                        column)));
      }
    }
    if (!leftOut.isEmpty()) {
      cells = cells.where(i -> complete[i]);
    }
  }

  private boolean missing(String column, int cell) {
    return !column.equals(Cells.BATCH_ROW) && isMissing(column, cell);
  }

  private boolean isMissing(String column, int cell) {
    return cells
        .findFactor(column)
        .map(factor -> factor.code(cell) == Factor.MISSING)
        .orElseGet(() -> Double.isNaN(measure(column).value(cell)));
  }

  private Measure measure(String column) {
    return cells
        .findMeasure(column)
        .orElseThrow(
            () ->
                new CannotFit(
                    Reason.WRONG_COLUMN,
                    List.of(column),
                    "these records have no column \"%s\"; there are %s and %s"
                        .formatted(
                            column,
                            cells.factors().stream().map(Factor::name).toList(),
                            cells.measures().stream().map(Measure::name).toList())));
  }

  private void refuseHopeless() {
    long grafts = cells.graftsTotal();
    long takes = cells.takesTotal();
    if (grafts == 0) {
      throw new CannotFit(
          Reason.NO_CELLS,
          List.copyOf(leftOut.keySet()),
          leftOut.isEmpty()
              ? "there are no assessed grafts to learn from"
              : "no graft has all the columns asked for; not recorded: %s. Leave out the columns that are hardly ever recorded"
                  .formatted(leftOut));
    }
    if (takes == 0 || takes == grafts) {
      throw new CannotFit(
          takes == 0 ? Reason.NONE_TOOK : Reason.ALL_TOOK,
          List.of(),
          "%s, so nothing can be said about what moves take; check that failures and takes are both recorded, or add records"
              .formatted(allAlike(takes, grafts)));
    }
  }

  private static String allAlike(long takes, long grafts) {
    if (grafts == 1) {
      return takes == 0 ? "the only graft failed" : "the only graft took";
    }
    return "%s of the %,d grafts took".formatted(takes == 0 ? "none" : "all", grafts);
  }

  private void build() {
    List<FixedBlock> blocks = new ArrayList<>();
    for (String column : model.adjusted()) {
      if (cells.findFactor(column).isPresent()) {
        addLevels(column, blocks);
      } else {
        addNumber(column, 0, blocks);
      }
    }
    model.curves().forEach((column, df) -> addNumber(column, df, blocks));
    if (!model.within().isEmpty()) {
      addWithin(blocks);
    }
    Map<String, int[]> varying = new LinkedHashMap<>();
    for (String column : model.varying()) {
      addVarying(column, varying);
    }
    design = new TakeDesign(cells.size(), blocks, varying);
    evidence =
        new ModelData(
            cells.takes(),
            cells.grafts(),
            design.patterns(),
            varying.values().toArray(int[][]::new),
            levels.values().stream().mapToInt(List::size).toArray(),
            levels.values().stream().mapToInt(VaryingFactor::exempt).toArray());
  }

  private void addWithin(List<FixedBlock> blocks) {
    Within within = new Within(model, cells, blocks);
    within.add();
    unusedWithin.putAll(within.unused());
    unusedWithin.forEach(
        (group, why) -> {
          if (why == WithinComparison.Unused.HARDLY_CHANGES_WITHIN) {
            warnings.add(
                new FitWarning(
                    Kind.COMPARED_ACROSS,
                    group,
                    "%s hardly changes within one %s, so it is compared across them, where their luck can't be told from its effect"
                        .formatted(model.compared().orElseThrow(), group)));
          }
        });
  }

  private void addLevels(String column, List<FixedBlock> blocks) {
    LevelsInUse used = LevelsInUse.of(cells.factor(column));
    if (used.levels().size() < 2) {
      warnOneLevel(column, used.levels());
      return;
    }
    String base = model.bases().getOrDefault(column, used.levels().get(0));
    if (!used.levels().contains(base)) {
      throw new CannotFit(
          Reason.WRONG_COLUMN,
          List.of(column),
          "no graft used has %s \"%s\", so it can't be the base; there are %s"
              .formatted(column, base, used.levels()));
    }
    blocks.add(new LevelBlock(column, used.levels(), used.levels().indexOf(base), used.codes()));
  }

  private void addNumber(String column, int degreesOfFreedom, List<FixedBlock> blocks) {
    double[] values = measure(column).values();
    double low = Arrays.stream(values).min().orElse(0);
    double high = Arrays.stream(values).max().orElse(0);
    if (!(low < high)) {
      warnOneLevel(column, List.of(Double.toString(low)));
      return;
    }
    Spline spline = null;
    if (degreesOfFreedom > 1) {
      spline = Spline.through(values, cells.grafts(), degreesOfFreedom);
      if (spline == null) {
        throw new CannotFit(
            Reason.TOO_FEW_VALUES,
            List.of(column),
            "%s has too few different values for a curve of %d degrees of freedom; ask for fewer, or a straight line"
                .formatted(column, degreesOfFreedom));
      }
    }
    blocks.add(new NumberBlock(column, values, spline));
  }

  private void addVarying(String column, Map<String, int[]> varying) {
    LevelsInUse used =
        column.equals(Cells.BATCH_ROW)
            ? LevelsInUse.ofRows(levelsOf(column))
            : LevelsInUse.of(levelsOf(column));
    if (used.levels().size() < 2 && column.equals(Cells.BATCH_ROW)) {
      return;
    }
    if (used.levels().size() < 2) {
      warnOneLevel(column, used.levels());
      return;
    }
    if (used.levels().size() < FEW) {
      warnings.add(
          new FitWarning(
              Kind.FEW_LEVELS,
              column,
              "%s has only %d levels, so how much it varies is hardly known; read its spread with its interval, or adjust for it instead"
                  .formatted(column, used.levels().size())));
    }
    varying.put(column, used.codes());
    levels.put(column, used.levels());
  }

  private void warnOneLevel(String column, List<String> level) {
    warnings.add(
        new FitWarning(
            Kind.ONE_LEVEL,
            column,
            "%s is the same (%s) for every graft used, so it can't explain anything and was left out of the model"
                .formatted(column, level.isEmpty() ? "none" : level.get(0))));
  }
}
