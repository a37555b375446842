package org.taketally.answers.adjusted;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.model.TakeModel;
import org.taketally.records.GraftRecords;
import org.taketally.records.columns.DerivedColumn;
import org.taketally.records.columns.RecordColumn;

/**
 * The model taken when nobody names one: what the records hold, in a fixed order, each choice said.
 *
 * <p>A circumstance is adjusted for if it is recorded for at least {@value #RECORDED_PERCENT} % of
 * the grafts and comes in at least two kinds of {@value #LEAST_GRAFTS} grafts; storage days enter
 * as a curve where there are enough different ones. Everything that groups grafts made together
 * varies around a common mean: cultivar, pairing, grafter, site, block, season, grafting day, the
 * records' own batches, and rows of several grafts; with three seasons or more, so does what each
 * rootstock does in a season of its own. Common practice, no source. Every recorded column that is
 * left out is named. A column that the dictionary names as batches is one of groups, even if it
 * holds numbers or would be a circumstance.
 *
 * @param model the model
 * @param choices one per circumstance considered
 */
public record SuggestedModel(TakeModel model, List<ModelChoice> choices) {

  /** Share of the grafts a column must be recorded for, per cent. */
  static final int RECORDED_PERCENT = 90;

  /** Grafts each of at least two levels must have. */
  public static final int LEAST_GRAFTS = 10;

  private static final int CURVE_VALUES = 6;
  private static final int CURVE_FREEDOM = 3;
  private static final String STORAGE = DerivedColumn.STORAGE_DAYS.columnName();
  private static final List<String> CIRCUMSTANCES =
      List.of(
          RecordColumn.METHOD.columnName(),
          RecordColumn.BUD_STAGE.columnName(),
          RecordColumn.STOCK_CONDITION.columnName(),
          RecordColumn.CAMBIUM_MATCH.columnName(),
          RecordColumn.TOOL_CLEANING.columnName(),
          RecordColumn.BUDWOOD_KEPT.columnName(),
          DerivedColumn.GRAFT_ATTEMPT.columnName());

  /** Columns every answer looks at; no sheet may lack them. */
  private static final List<String> ALWAYS =
      List.of(RecordColumn.CULTIVAR.columnName(), RecordColumn.ROOTSTOCK.columnName());

  private static final String SITE = RecordColumn.SITE.columnName();
  private static final String BLOCK = RecordColumn.BLOCK.columnName();
  private static final String SEASON = RecordColumn.SEASON.columnName();
  private static final String ROOTSTOCK = RecordColumn.ROOTSTOCK.columnName();

  /** What a rootstock does in one season beside what it does in all. */
  public static final String STOCK_BY_SEASON = TakeModel.together(ROOTSTOCK, SEASON);

  private static final List<String> VARYING =
      List.of(
          RecordColumn.CULTIVAR.columnName(),
          DerivedColumn.PAIRING.columnName(),
          RecordColumn.GRAFTER.columnName(),
          SITE,
          BLOCK,
          SEASON,
          DerivedColumn.GRAFTING_DAY.columnName());

  /** With fewer seasons, what a rootstock does in one can't be told from what it does in all. */
  private static final int SEASONS = 3;

  /** More rows of several grafts than this aren't told apart. */
  public static final int MOST_ROWS = 20_000;

  /** Columns that say what became of a graft, or nothing that could move its take. */
  private static final Set<String> NO_CIRCUMSTANCE =
      Set.of(
          RecordColumn.RECORD.columnName(),
          RecordColumn.GRAFT_DATE.columnName(),
          RecordColumn.BUDWOOD_CUT_DATE.columnName(),
          RecordColumn.ASSESSED_DATE.columnName(),
          DerivedColumn.DAYS_TO_ASSESSMENT.columnName(),
          RecordColumn.GRAFTS.columnName(),
          RecordColumn.TAKES.columnName(),
          RecordColumn.OUTCOME.columnName(),
          RecordColumn.FAILURE_CAUSE.columnName(),
          RecordColumn.REPLACES.columnName(),
          RecordColumn.NOTES.columnName());

  public SuggestedModel {
    choices = List.copyOf(choices);
  }

  /**
   * Every column the suggestion may use, where the records have it.
   *
   * @return column names
   */
  public static List<String> columns() {
    List<String> all = new ArrayList<>(CIRCUMSTANCES);
    all.add(STORAGE);
    all.add(ROOTSTOCK);
    all.addAll(VARYING);
    return all;
  }

  /**
   * The model that suits some records.
   *
   * @param records any records
   * @return the model and how it came about
   */
  public static SuggestedModel of(GraftRecords records) {
    List<String> names = records.frame().columnNames();
    List<String> batches = records.batches().stream().filter(SuggestedModel::mayGroup).toList();
    Set<String> considered = new LinkedHashSet<>(columns());
    considered.addAll(batches);
    List<String> wanted = new ArrayList<>(considered.stream().filter(names::contains).toList());
    wanted.add(Cells.BATCH_ROW);
    SuggestedModel suggested = of(CellsOf.records(records, wanted), batches);
    List<ModelChoice> choices = new ArrayList<>(suggested.choices());
    List<String> unused =
        names.stream()
            .filter(name -> !considered.contains(name))
            .filter(name -> !NO_CIRCUMSTANCE.contains(name) || records.batches().contains(name))
            .filter(
                name -> records.frame().column(name).countMissing() < records.frame().rowCount())
            .toList();
    if (!unused.isEmpty()) {
      choices.add(new ModelChoice(ModelChoice.Kind.UNUSED, unused, 100));
    }
    return new SuggestedModel(suggested.model(), choices);
  }

  /**
   * The columns answers need of the records: the model's, and cultivar and rootstock, which every
   * answer looks at.
   *
   * @param model the model
   * @return column names
   */
  public static Set<String> needed(TakeModel model) {
    Set<String> columns = new LinkedHashSet<>(model.columns());
    columns.addAll(ALWAYS);
    return columns;
  }

  /**
   * The model that suits some records.
   *
   * @param cells cells with those of {@link #columns()} that the records have
   * @return the model and how it came about
   */
  public static SuggestedModel of(Cells cells) {
    return of(cells, List.of());
  }

  private static SuggestedModel of(Cells cells, List<String> batches) {
    List<ModelChoice> choices = new ArrayList<>();
    TakeModel model = TakeModel.ofTakes();
    for (String name : CIRCUMSTANCES) {
      if (!batches.contains(name) && useful(cells, name, choices)) {
        model = model.adjustFor(name);
      }
    }
    model = batches.contains(STORAGE) ? model : storage(model, cells, choices);
    for (String name : VARYING) {
      if (grouped(cells, name, choices)) {
        model = name.equals(BLOCK) ? block(model) : model.varyBy(name);
      }
    }
    model = combined(batches(model, cells, batches, choices), cells, choices);
    choices.add(new ModelChoice(ModelChoice.Kind.VARIES, model.varying(), 100));
    if (compares(cells)) {
      model = model.compare(ROOTSTOCK);
    }
    return new SuggestedModel(model, choices);
  }

  private static boolean compares(Cells cells) {
    return cells.findFactor(ROOTSTOCK).filter(f -> levelsInUse(cells, f) >= 2).isPresent();
  }

  /** Whether a column of groups can vary; says why not where it is recorded. */
  private static boolean grouped(Cells cells, String name, List<ModelChoice> choices) {
    Factor factor =
        cells.findFactor(name).or(() -> cells.findMeasure(name).map(Factor::of)).orElse(null);
    if (factor == null || levelsWithAnyGrafts(cells, factor) < 2) {
      return false;
    }
    int recorded = recordedPercent(cells, i -> factor.code(i) != Factor.MISSING);
    if (recorded < RECORDED_PERCENT) {
      choices.add(ModelChoice.of(ModelChoice.Kind.GROUP_RARELY_RECORDED, name, recorded));
      return false;
    }
    if (!varies(cells, factor)) {
      choices.add(ModelChoice.of(ModelChoice.Kind.GROUP_OF_ONE, name, recorded));
      return false;
    }
    return true;
  }

  /** Whether a column that the dictionary names as batches can be one: not the result, say. */
  private static boolean mayGroup(String column) {
    return !NO_CIRCUMSTANCE.contains(column) && !ALWAYS.contains(column);
  }

  /** The records' own batches; those that aren't used are named, too. */
  private static TakeModel batches(
      TakeModel model, Cells cells, List<String> batches, List<ModelChoice> choices) {
    TakeModel more = model;
    for (String name : batches) {
      int said = choices.size();
      if (VARYING.contains(name)) {
        continue;
      }
      if (grouped(cells, name, choices)) {
        more = more.varyBy(name);
      } else if (choices.size() == said) {
        choices.add(ModelChoice.of(ModelChoice.Kind.ALL_ALIKE, name, 100));
      }
    }
    return more;
  }

  /** A block of one site is another than the block of that name at another site. */
  private static TakeModel block(TakeModel model) {
    return model.varying().contains(SITE) ? model.varyTogether(SITE, BLOCK) : model.varyBy(BLOCK);
  }

  /** What each rootstock does in a season of its own, and what each row of grafts does. */
  private static TakeModel combined(TakeModel model, Cells cells, List<ModelChoice> choices) {
    TakeModel more = model;
    if (compares(cells)
        && model.varying().contains(SEASON)
        && levelsWithAnyGrafts(cells, cells.factor(SEASON)) >= SEASONS) {
      more = more.varyTogether(ROOTSTOCK, SEASON);
    }
    Factor rows = cells.findFactor(Cells.BATCH_ROW).orElse(null);
    if (rows != null && rows.size() > MOST_ROWS) {
      choices.add(ModelChoice.of(ModelChoice.Kind.TOO_MANY_ROWS, Cells.BATCH_ROW, 100));
    } else if (rows != null && varies(cells, rows)) {
      more = more.varyByBatchRow();
    }
    return more;
  }

  private static boolean useful(Cells cells, String name, List<ModelChoice> choices) {
    Factor factor = cells.findFactor(name).orElse(null);
    if (factor == null || (DerivedColumn.named(name) && levelsWithAnyGrafts(cells, factor) < 2)) {
      return false;
    }
    int recorded = recordedPercent(cells, i -> factor.code(i) != Factor.MISSING);
    if (recorded < RECORDED_PERCENT) {
      choices.add(ModelChoice.of(ModelChoice.Kind.RARELY_RECORDED, name, recorded));
      return false;
    }
    if (levelsInUse(cells, factor) < 2) {
      choices.add(ModelChoice.of(ModelChoice.Kind.ALL_ALIKE, name, recorded));
      return false;
    }
    choices.add(ModelChoice.of(ModelChoice.Kind.ADJUSTED, name, recorded));
    return true;
  }

  private static TakeModel storage(TakeModel model, Cells cells, List<ModelChoice> choices) {
    Measure days = cells.findMeasure(STORAGE).orElse(null);
    if (days == null) {
      return model;
    }
    int recorded = recordedPercent(cells, i -> !Double.isNaN(days.value(i)));
    if (recorded < RECORDED_PERCENT) {
      choices.add(ModelChoice.of(ModelChoice.Kind.RARELY_RECORDED, STORAGE, recorded));
      return model;
    }
    long distinct =
        IntStream.range(0, cells.size())
            .mapToDouble(i -> days.value(i))
            .filter(value -> !Double.isNaN(value))
            .distinct()
            .count();
    if (distinct < 2) {
      choices.add(ModelChoice.of(ModelChoice.Kind.ALL_ALIKE, STORAGE, recorded));
      return model;
    }
    boolean curve = distinct >= CURVE_VALUES;
    choices.add(
        ModelChoice.of(
            curve ? ModelChoice.Kind.AS_CURVE : ModelChoice.Kind.AS_LINE, STORAGE, recorded));
    return curve ? model.adjustForCurve(STORAGE, CURVE_FREEDOM) : model.adjustFor(STORAGE);
  }

  /** Two levels or more, and fewer levels than grafts: otherwise it can't be told from chance. */
  private static boolean varies(Cells cells, Factor factor) {
    int levels = levelsWithAnyGrafts(cells, factor);
    return levels >= 2 && levels <= cells.graftsTotal() / 2;
  }

  private static int recordedPercent(Cells cells, java.util.function.IntPredicate recorded) {
    long with =
        IntStream.range(0, cells.size()).filter(recorded).mapToLong(i -> cells.grafts(i)).sum();
    return cells.graftsTotal() == 0 ? 0 : (int) (100 * with / cells.graftsTotal());
  }

  private static int levelsInUse(Cells cells, Factor factor) {
    return (int)
        java.util.Arrays.stream(graftsOf(cells, factor)).filter(n -> n >= LEAST_GRAFTS).count();
  }

  private static int levelsWithAnyGrafts(Cells cells, Factor factor) {
    return (int) java.util.Arrays.stream(graftsOf(cells, factor)).filter(n -> n > 0).count();
  }

  private static long[] graftsOf(Cells cells, Factor factor) {
    long[] grafts = new long[factor.size()];
    for (int i = 0; i < cells.size(); i++) {
      if (factor.code(i) != Factor.MISSING) {
        grafts[factor.code(i)] += cells.grafts(i);
      }
    }
    return grafts;
  }
}
