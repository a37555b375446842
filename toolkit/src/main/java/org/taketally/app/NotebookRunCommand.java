package org.taketally.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import org.taketally.files.FileSet;
import org.taketally.files.WouldReplace;
import org.taketally.notebook.runner.NotebookPage;
import org.taketally.notebook.runner.NotebookRunner;
import org.taketally.notebook.runner.RunOptions;
import org.taketally.notebook.runner.RunReport;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** {@code taketally notebook run}. */
@Command(
    name = "run",
    mixinStandardHelpOptions = true,
    description = {
      "Runs notebooks from top to bottom, without Jupyter, and writes the executed copies.",
      "Each notebook runs in a process of its own. Paths in it begin at its own folder, as in"
          + " Jupyter.",
      "Exit status: 0 all ran, 1 a cell failed (the copy is written up to there), 2 usage."
    })
final class NotebookRunCommand implements Callable<Integer> {

  @Parameters(
      paramLabel = "NOTEBOOK",
      arity = "1..*",
      description = "Notebooks (.ipynb), in this order.")
  private List<Path> notebooks;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      defaultValue = "executed",
      description = "Folder for the executed copies (executed).")
  private Path out;

  @Option(
      names = "--set",
      paramLabel = "NAME=VALUE",
      description =
          "A new value for a variable of the cell tagged \"parameters\"; may be repeated.")
  private Map<String, String> parameters = Map.of();

  @Option(names = "--html", description = "Also write each notebook as a page.")
  private boolean html;

  @Option(
      names = "--plain-page",
      description = "In the page, show outputs as text only: for notebooks of unknown origin.")
  private boolean plainPage;

  @Option(
      names = "--timeout",
      paramLabel = "SECONDS",
      description = "Longest time for one cell (none).")
  private Double timeout;

  @Mixin private ReplaceOption replace = new ReplaceOption();

  @Option(names = "--allow-errors", description = "Go on after a cell that fails.")
  private boolean allowErrors;

  @Option(names = "--timing", description = "Note in the notebook when each cell ran.")
  private boolean timing;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    RunOptions options = options();
    requireNotebooks();
    int status = 0;
    for (Path notebook : notebooks) {
      status = Math.max(status, run(notebook, options));
    }
    spec.commandLine().getOut().flush();
    return status;
  }

  private void requireNotebooks() throws IOException {
    Set<Path> names = new HashSet<>();
    for (Path notebook : notebooks) {
      InputFile.require(spec.commandLine(), notebook);
      if (!names.add(notebook.getFileName())) {
        throw wrong(
            "two notebooks are named %s, so one copy in %s would replace the other; run them one at a time, each with its own --out"
                .formatted(notebook.getFileName(), out));
      }
    }
    for (Path notebook : notebooks) {
      copies(notebook).requireFree(names(notebook));
    }
  }

  private RunOptions options() {
    RunOptions options = RunOptions.usual().allowErrors(allowErrors).timing(timing);
    for (Map.Entry<String, String> each : parameters.entrySet()) {
      options = options.set(each.getKey(), each.getValue());
    }
    if (timeout != null) {
      if (!(timeout > 0)) {
        throw wrong("--timeout: found %s, expected seconds above 0".formatted(timeout));
      }
      options = options.timeout(Duration.ofMillis((long) (timeout * 1000)));
    }
    return options;
  }

  private ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }

  private int run(Path notebook, RunOptions options) throws WouldReplace {
    PrintWriter told = spec.commandLine().getOut();
    RunReport report;
    try {
      report = runner(notebook, options).telling(new CellProgress(told, notebook)).run(notebook);
      write(notebook, report);
    } catch (WouldReplace spared) {
      throw spared;
    } catch (IOException | IllegalArgumentException unusable) {
      throw wrong(unusable.getMessage());
    }
    report
        .failure()
        .ifPresent(
            failed -> spec.commandLine().getErr().println(notebook + ", " + failed.sentence()));
    return report.failure().isPresent() ? 1 : 0;
  }

  private static NotebookRunner runner(Path notebook, RunOptions options) {
    Path folder = notebook.toAbsolutePath().normalize().getParent();
    return NotebookRunner.apart(options, folder);
  }

  private FileSet copies(Path notebook) {
    return FileSet.in(out, notebook.getFileName().toString(), replace.guard(notebooks));
  }

  /** Names of the executed copy and, if asked for, of the page. */
  private String[] names(Path notebook) {
    String name = notebook.getFileName().toString();
    return html || plainPage
        ? new String[] {name, name.replaceFirst("\\.ipynb$", "") + ".html"}
        : new String[] {name};
  }

  private void write(Path notebook, RunReport report) throws IOException {
    FileSet copies = copies(notebook);
    String[] names = names(notebook);
    copies.add(names[0], report.notebook().text());
    if (names.length > 1) {
      copies.add(names[1], NotebookPage.of(report.notebook(), plainPage));
    }
    for (Path written : copies.write()) {
      spec.commandLine().getOut().println("wrote " + written);
    }
  }
}
