package org.taketally.notebook;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.taketally.figure.FigurePng;
import org.taketally.notebook.display.Displays;
import org.taketally.notebook.kernel.KernelSetup;
import org.taketally.notebook.kernel.engine.EngineOptions;

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
            .completing(KnownWords::of)
            .advising(ToolkitKernel::advice)
            .picturing(FigurePng::of)
            .naming(Doing::at),
        log);
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
