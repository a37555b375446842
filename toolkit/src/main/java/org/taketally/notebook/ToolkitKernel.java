package org.taketally.notebook;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.taketally.cells.Cells;
import org.taketally.figure.FigurePng;
import org.taketally.notebook.display.Displays;
import org.taketally.notebook.kernel.KernelSetup;
import org.taketally.notebook.kernel.engine.EngineOptions;
import org.taketally.records.GraftRecords;
import tech.tablesaw.api.ColumnType;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/** The kernel as the toolkit sets it up: its packages imported, its values displayed. */
public final class ToolkitKernel {

  private static final List<String> IMPORTS =
      List.of(
          "org.taketally.terms.*",
          "org.taketally.records.*",
          "org.taketally.records.columns.*",
          "org.taketally.records.problems.*",
          "org.taketally.records.dictionary.*",
          "org.taketally.records.rows.*",
          "org.taketally.records.checks.*",
          "org.taketally.cells.*",
          "org.taketally.model.*",
          "org.taketally.model.compare.*",
          "org.taketally.answers.*",
          "org.taketally.answers.counts.*",
          "org.taketally.answers.survival.*",
          "org.taketally.answers.adjusted.*",
          "org.taketally.answers.confounding.*",
          "org.taketally.answers.verdict.*",
          "org.taketally.answers.effects.*",
          "org.taketally.answers.batches.*",
          "org.taketally.answers.checks.*",
          "org.taketally.answers.prediction.*",
          "org.taketally.answers.advice.*",
          "org.taketally.plan.forecast.*",
          "org.taketally.plan.layout.*",
          "org.taketally.plan.next.*",
          "org.taketally.plan.order.*",
          "org.taketally.plan.size.*",
          "org.taketally.watch.*",
          "org.taketally.watch.chart.*",
          "org.taketally.analysis.*",
          "org.taketally.wording.*",
          "org.taketally.figure.*",
          "org.taketally.publish.*",
          "tech.tablesaw.api.*");

  private static final int ROWS_SEARCHED = 10_000;
  private static final int WORDS = 500;

  private ToolkitKernel() {}

  /**
   * The kernel's setup, logging to where standard error goes at the time of this call.
   *
   * @return name, version, imports and displays
   */
  public static KernelSetup setup() {
    java.io.PrintStream error = System.err;
    Consumer<String> log = line -> error.println("taketally kernel: " + line);
    String version =
        Optional.ofNullable(ToolkitKernel.class.getPackage().getImplementationVersion())
            .orElse("(not packaged)");
    return new KernelSetup(
        "Taketally",
        version,
        EngineOptions.usual()
            .importing(IMPORTS)
            .showing(Displays::register)
            .completing(ToolkitKernel::words)
            .advising(ToolkitKernel::advice)
            .picturing(FigurePng::of),
        log);
  }

  /** Names of columns and their levels, for completion within quotes. */
  private static Collection<String> words(Object value) {
    Set<String> words = new LinkedHashSet<>();
    if (value instanceof GraftRecords records) {
      words.addAll(words(records.frame()));
    } else if (value instanceof Table table) {
      words.addAll(table.columnNames());
      table.columns().forEach(column -> addLevels(column, words));
    } else if (value instanceof Cells cells) {
      cells.factors().forEach(factor -> words.add(factor.name()));
      cells.factors().forEach(factor -> words.addAll(factor.levels()));
    }
    return words;
  }

  private static void addLevels(Column<?> column, Set<String> words) {
    if (column.type() == ColumnType.STRING) {
      int rows = Math.min(column.size(), ROWS_SEARCHED);
      for (int row = 0; row < rows && words.size() < WORDS; row++) {
        words.add(column.getString(row));
      }
    }
  }

  private static String advice(Throwable thrown) {
    boolean reader =
        thrown instanceof NoClassDefFoundError && String.valueOf(thrown).contains("com/ibm/icu");
    return reader
        ? "Tablesaw opens files by name with a library that isn't part of Taketally. Records of"
            + " grafts: GraftRecords.read(Path.of(\"x.csv\")); any other"
            + " table: Table.read().csv(Files.newBufferedReader(Path.of(\"x.csv\")))."
        : "";
  }
}
