package org.taketally.notebook.display;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.dflib.jjava.jupyter.kernel.display.RenderContext;
import org.dflib.jjava.jupyter.kernel.display.Renderer;
import org.dflib.jjava.jupyter.kernel.display.mime.MIMEType;
import org.taketally.analysis.Analysis;
import org.taketally.answers.Answer;
import org.taketally.answers.effects.Band;
import org.taketally.answers.verdict.Verdict;
import org.taketally.cells.Cells;
import org.taketally.model.LotPrediction;
import org.taketally.model.TakeDesign;
import org.taketally.model.TakeDraws;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.plan.next.NextTrial;
import org.taketally.plan.order.BudwoodPlan;
import org.taketally.plan.order.GraftOrder;
import org.taketally.plan.size.TrialSize;
import org.taketally.plan.size.VerdictChances;
import org.taketally.records.GraftRecords;
import org.taketally.records.rows.SetAside;
import org.taketally.terms.Problem;
import org.taketally.watch.SeasonReplay;
import org.taketally.watch.WatchedSeason;
import org.taketally.wording.AnswerTable;
import org.taketally.wording.Names;
import tech.tablesaw.api.Table;

/**
 * The register of displays. Taketally's own kernel and kernels of JJava's line use it by
 * themselves; in another kernel of IJava's line call {@link #registerWith} once.
 */
public final class Displays {

  private static final Map<Class<?>, Function<Object, Shown>> REGISTER = new LinkedHashMap<>();

  static {
    add(GraftRecords.class, RecordsDisplay::records);
    add(Problem.class, RecordsDisplay::problem);
    add(SetAside.class, RecordsDisplay::setAside);
    add(Cells.class, RecordsDisplay::cells);
    add(Table.class, table -> Shown.of(Tables.grid(table)));
    add(TakeModel.class, Fits::model);
    add(TakeFit.class, Fits::fit);
    add(TakeDesign.class, Fits::design);
    add(TakeDraws.class, Fits::draws);
    add(LotPrediction.class, Fits::forecast);
    add(Answer.class, Answers::answer);
    add(AnswerTable.class, Answers::table);
    add(Verdict.class, verdict -> Shown.paragraph(Names.of(verdict)));
    add(Band.class, band -> Shown.paragraph(Names.of(band)));
    add(TrialSize.class, Plans::size);
    add(TrialLayout.class, Plans::layout);
    add(VerdictChances.class, Plans::chances);
    add(NextTrial.class, Plans::next);
    add(GraftOrder.class, Plans::order);
    add(BudwoodPlan.class, Plans::budwood);
    add(WatchedSeason.class, Plans::season);
    add(SeasonReplay.class, Plans::replay);
    add(Analysis.class, Answers::analysis);
    add(Enum.class, Displays::constant);
    add(Record.class, Outline::record);
    add(Collection.class, Displays::collection);
    add(Map.class, Outline::map);
  }

  private Displays() {}

  private static <T> void add(Class<T> type, Function<T, Shown> display) {
    REGISTER.put(type, value -> display.apply(type.cast(value)));
  }

  /** Collections of what has a display are shown item by item, others by their text. */
  private static Shown collection(Collection<?> items) {
    if (!items.isEmpty() && items.stream().allMatch(Problem.class::isInstance)) {
      return RecordsDisplay.problems(items.stream().map(Problem.class::cast).toList());
    }
    if (!items.isEmpty() && items.stream().allMatch(Answer.class::isInstance)) {
      return Shown.all(items.stream().map(Answer.class::cast).map(Answers::answer).toList());
    }
    return Outline.records(items);
  }

  /** Constants of the toolkit in words; others by their text. */
  private static Shown constant(Enum<?> constant) {
    return constant.getDeclaringClass().getName().startsWith("org.taketally.")
        ? Shown.paragraph(Brief.of(constant))
        : null;
  }

  /**
   * Registers every display.
   *
   * @param renderer of a kernel
   */
  public static void register(Renderer renderer) {
    REGISTER.forEach((type, display) -> register(renderer, type, display));
  }

  private static <T> void register(
      Renderer renderer, Class<T> type, Function<Object, Shown> display) {
    renderer
        .createRegistration(type)
        .preferring(MIMEType.TEXT_HTML)
        .register((value, context) -> render(display.apply(value), context));
  }

  private static void render(Shown shown, RenderContext context) {
    if (shown != null) {
      context.renderIfRequested(MIMEType.TEXT_HTML, shown::page);
      context.renderIfRequested(MIMEType.TEXT_PLAIN, shown::text);
    }
  }

  /**
   * A value as HTML, for any place that shows it.
   *
   * @param value anything
   * @return markup with its own style, or empty if the value has no display
   */
  public static Optional<String> html(Object value) {
    return shown(value).map(Shown::page);
  }

  /**
   * A value as plain text.
   *
   * @param value anything
   * @return lines, or empty if the value has no display
   */
  public static Optional<String> text(Object value) {
    return shown(value).map(Shown::text);
  }

  private static Optional<Shown> shown(Object value) {
    return REGISTER.entrySet().stream()
        .filter(each -> each.getKey().isInstance(value))
        .findFirst()
        .map(each -> each.getValue().apply(value));
  }

  /**
   * Registers every display in another kernel of IJava's line, whose classes this toolkit doesn't
   * know. In a cell of IJava: {@code Displays.registerWith(getKernelInstance().getRenderer())}.
   *
   * @param renderer the kernel's renderer
   * @throws IllegalArgumentException if it isn't a renderer of that line
   */
  public static void registerWith(Object renderer) {
    if (renderer instanceof Renderer known) {
      register(known);
    } else {
      REGISTER.forEach(new ForeignRenderer(renderer)::register);
    }
  }
}
