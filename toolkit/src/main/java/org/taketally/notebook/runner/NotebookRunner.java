package org.taketally.notebook.runner;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import org.taketally.notebook.kernel.engine.output.CellError;
import org.taketally.notebook.kernel.engine.output.CellResult;
import org.taketally.notebook.runner.RunReport.FailedCell;

/**
 * Runs notebooks from top to bottom. Cells tagged {@code skip-execution} are left as they are,
 * those tagged {@code raises-exception} may fail.
 */
public final class NotebookRunner {

  private final Function<CellOutputs, CellEngine> engines;
  private final RunOptions options;
  private final BiConsumer<Integer, Integer> progress;

  /** With any way to run cells, and a listener for its progress. */
  NotebookRunner(
      Function<CellOutputs, CellEngine> engines,
      RunOptions options,
      BiConsumer<Integer, Integer> progress) {
    this.engines = engines;
    this.options = options;
    this.progress = progress;
  }

  /**
   * A runner that runs cells in this process.
   *
   * @param options how to run
   * @return a runner
   */
  public static NotebookRunner with(RunOptions options) {
    return new NotebookRunner(EngineHere::new, options, (done, all) -> {});
  }

  /**
   * A runner that runs cells in a process of their own, so that relative paths in the notebook
   * begin at a folder of choice, and a cell can end no other process than that.
   *
   * @param options how to run
   * @param folder where the process begins
   * @return a runner
   */
  public static NotebookRunner apart(RunOptions options, Path folder) {
    return new NotebookRunner(
        outputs -> new EngineApart(outputs, folder), options, (done, all) -> {});
  }

  /**
   * With news of its progress.
   *
   * @param listener gets the number of cells done and of all cells to run, before each cell and at
   *     the end
   * @return a runner that tells
   */
  public NotebookRunner telling(BiConsumer<Integer, Integer> listener) {
    return new NotebookRunner(engines, options, listener);
  }

  /**
   * Runs a notebook.
   *
   * @param file the notebook
   * @return the executed notebook and whether it failed; the file itself isn't changed
   * @throws IOException if the file can't be read
   * @throws IllegalArgumentException if a parameter isn't declared in the notebook, or its code
   *     isn't Java
   */
  public RunReport run(Path file) throws IOException {
    return run(Notebook.read(file));
  }

  /**
   * Runs a notebook.
   *
   * @param notebook is changed
   * @return the executed notebook and whether it failed
   * @throws IllegalArgumentException if a parameter isn't declared in the notebook, or its code
   *     isn't Java
   */
  public RunReport run(Notebook notebook) {
    requireJava(notebook);
    Parameters.set(notebook, options.parameters());
    List<NotebookCell> cells = notebook.cells().stream().filter(NotebookRunner::isToRun).toList();
    cells.forEach(NotebookCell::clear);
    CellOutputs outputs = new CellOutputs();
    try (CellEngine engine = engines.apply(outputs)) {
      describe(notebook, engine);
      for (int i = 0; i < cells.size(); i++) {
        progress.accept(i, cells.size());
        Optional<CellError> error = run(cells.get(i), i + 1, engine, outputs);
        if (error.isPresent()) {
          FailedCell failed = new FailedCell(i + 1, cells.get(i).source(), error.get());
          return new RunReport(notebook, i + 1, Optional.of(failed));
        }
      }
    }
    progress.accept(cells.size(), cells.size());
    return new RunReport(notebook, cells.size(), Optional.empty());
  }

  private static void requireJava(Notebook notebook) {
    String language = notebook.language();
    if (!language.isEmpty() && !language.equalsIgnoreCase("java")) {
      throw new IllegalArgumentException(
          "the notebook's code is written in \"%s\", expected java; if it is Java all the same, choose the kernel \"Taketally (Java)\" in Jupyter and save it"
              .formatted(language));
    }
  }

  private static boolean isToRun(NotebookCell cell) {
    return cell.isCode() && !cell.source().isBlank() && !cell.hasTag("skip-execution");
  }

  private static void describe(Notebook notebook, CellEngine engine) {
    notebook.metadata().add("language_info", engine.languageInfo());
    if (!notebook.metadata().has("kernelspec")) {
      JsonObject spec = new JsonObject();
      spec.addProperty("display_name", "Taketally (Java)");
      spec.addProperty("language", "java");
      spec.addProperty("name", "taketally");
      notebook.metadata().add("kernelspec", spec);
    }
  }

  /** Runs one cell; gives its error if it wasn't allowed to fail. */
  private Optional<CellError> run(
      NotebookCell cell, int count, CellEngine engine, CellOutputs outputs) {
    outputs.begin(cell);
    cell.setExecutionCount(count);
    Instant began = Instant.now();
    CellResult result;
    try (TimeLimit limit = new TimeLimit(options.timeout(), engine)) {
      result = limit.applyTo(engine.run(count, cell.source()));
    }
    result.value().ifPresent(value -> outputs.result(value, count));
    result.error().ifPresent(outputs::error);
    if (options.timing()) {
      note(cell, began);
    }
    boolean allowed = options.allowErrors() || cell.hasTag("raises-exception");
    return allowed ? Optional.empty() : result.error();
  }

  private static void note(NotebookCell cell, Instant began) {
    JsonObject times = new JsonObject();
    times.addProperty("iopub.status.busy", began.truncatedTo(ChronoUnit.MICROS).toString());
    times.addProperty("iopub.status.idle", Instant.now().truncatedTo(ChronoUnit.MICROS).toString());
    cell.metadata().add("execution", times);
  }
}
