package org.taketally.answers.adjusted;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.taketally.answers.Words;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.model.TakeModel;
import org.taketally.records.GraftRecords;

/**
 * The model taken when nobody names one: what the records hold, in a fixed order, each choice said.
 *
 * <p>A circumstance is adjusted for if it is recorded for at least {@value #RECORDED_PERCENT} % of
 * the grafts and comes in at least two kinds of {@value #LEAST_GRAFTS} grafts; storage days enter
 * as a curve where there are enough different ones. Cultivar, pairing, grafter, site, season and
 * grafting day vary around a common mean. Common practice, no source.
 *
 * @param model the model
 * @param choices one sentence per circumstance considered
 */
public record SuggestedModel(TakeModel model, List<String> choices) {

  /** Share of the grafts a column must be recorded for, per cent. */
  static final int RECORDED_PERCENT = 90;

  /** Grafts each of at least two levels must have. */
  static final int LEAST_GRAFTS = 10;

  private static final int CURVE_VALUES = 6;
  private static final int CURVE_FREEDOM = 3;
  private static final String STORAGE = "storage_days";
  private static final List<String> CIRCUMSTANCES =
      List.of(
          "method",
          "bud_stage",
          "stock_condition",
          "cambium_match",
          "tool_cleaning",
          "budwood_kept");

  /** Columns every answer looks at; no sheet may lack them. */
  private static final List<String> ALWAYS = List.of("cultivar", "rootstock");

  private static final List<String> VARYING =
      List.of("cultivar", "pairing", "grafter", "site", "season", "grafting_day");

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
    all.add("rootstock");
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
    return of(CellsOf.records(records, columns().stream().filter(names::contains).toList()));
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
    List<String> choices = new ArrayList<>();
    TakeModel model = TakeModel.ofTakes();
    for (String name : CIRCUMSTANCES) {
      if (useful(cells, name, choices)) {
        model = model.adjustFor(name);
      }
    }
    model = storage(model, cells, choices);
    for (String name : VARYING) {
      if (cells.findFactor(name).filter(f -> varies(cells, f)).isPresent()) {
        model = model.varyBy(name);
      }
    }
    choices.add("Varying around a common mean: " + words(model.varying()) + ".");
    if (cells.findFactor("rootstock").filter(f -> levelsInUse(cells, f) >= 2).isPresent()) {
      model = model.compare("rootstock");
    }
    return new SuggestedModel(model, choices);
  }

  private static boolean useful(Cells cells, String name, List<String> choices) {
    Factor factor = cells.findFactor(name).orElse(null);
    if (factor == null) {
      return false;
    }
    String column = Words.column(name);
    int recorded = recordedPercent(cells, i -> factor.codes()[i] != Factor.MISSING);
    if (recorded < RECORDED_PERCENT) {
      choices.add(
          "Not adjusted for %s: recorded for %d %% of the grafts only."
              .formatted(column, recorded));
      return false;
    }
    if (levelsInUse(cells, factor) < 2) {
      choices.add("Not adjusted for %s: all grafts are alike in it.".formatted(column));
      return false;
    }
    choices.add("Adjusted for %s.".formatted(column));
    return true;
  }

  private static TakeModel storage(TakeModel model, Cells cells, List<String> choices) {
    Measure days = cells.findMeasure(STORAGE).orElse(null);
    if (days == null) {
      return model;
    }
    int recorded = recordedPercent(cells, i -> !Double.isNaN(days.values()[i]));
    if (recorded < RECORDED_PERCENT) {
      choices.add(
          "Not adjusted for storage days: recorded for %d %% of the grafts only."
              .formatted(recorded));
      return model;
    }
    long distinct =
        IntStream.range(0, cells.size())
            .mapToDouble(i -> days.values()[i])
            .filter(value -> !Double.isNaN(value))
            .distinct()
            .count();
    if (distinct < 2) {
      choices.add("Not adjusted for storage days: all grafts are alike in it.");
      return model;
    }
    boolean curve = distinct >= CURVE_VALUES;
    choices.add("Adjusted for storage days as a %s.".formatted(curve ? "curve" : "straight line"));
    return curve ? model.adjustForCurve(STORAGE, CURVE_FREEDOM) : model.adjustFor(STORAGE);
  }

  /** Two levels or more, and fewer levels than grafts: otherwise it can't be told from chance. */
  private static boolean varies(Cells cells, Factor factor) {
    int levels = levelsWithAnyGrafts(cells, factor);
    return levels >= 2 && levels <= cells.graftsTotal() / 2;
  }

  private static int recordedPercent(Cells cells, java.util.function.IntPredicate recorded) {
    long with =
        IntStream.range(0, cells.size()).filter(recorded).mapToLong(i -> cells.grafts()[i]).sum();
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
      if (factor.codes()[i] != Factor.MISSING) {
        grafts[factor.codes()[i]] += cells.grafts()[i];
      }
    }
    return grafts;
  }

  private static String words(List<String> columns) {
    return columns.isEmpty() ? "nothing" : Words.list(columns.stream().map(Words::column).toList());
  }
}
