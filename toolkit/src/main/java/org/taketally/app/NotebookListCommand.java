package org.taketally.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.taketally.notebook.install.InstalledKernel;
import org.taketally.notebook.install.JupyterFolders;
import org.taketally.notebook.runner.Notebook;
import org.taketally.notebook.runner.NotebookCell;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code taketally notebook list}. */
@Command(
    name = "list",
    mixinStandardHelpOptions = true,
    description = "Lists the kernels Jupyter finds, and the notebooks in a folder.")
final class NotebookListCommand implements Callable<Integer> {

  @Parameters(
      paramLabel = "FOLDER",
      arity = "0..1",
      defaultValue = ".",
      description = "Where to look for notebooks (here).")
  private Path folder;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    if (!Files.isDirectory(folder)) {
      throw new CommandLine.ParameterException(spec.commandLine(), "no folder " + folder);
    }
    List<InstalledKernel> kernels = InstalledKernel.all(JupyterFolders.ofThisMachine());
    out.println(kernels.isEmpty() ? "Jupyter finds no kernels." : "Kernels Jupyter finds:");
    kernels.forEach(kernel -> out.println("  " + kernel.sentence()));
    if (kernels.stream().noneMatch(InstalledKernel::isOurs)) {
      out.println("  Taketally's own is not among them: taketally notebook install");
    }
    out.println();
    listNotebooks(out);
    return 0;
  }

  private void listNotebooks(PrintWriter out) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      List<Path> notebooks =
          files.filter(file -> file.toString().endsWith(".ipynb")).sorted().toList();
      out.println(
          (notebooks.isEmpty() ? "No notebooks in " : "Notebooks in ")
              + folder.normalize().toAbsolutePath());
      for (Path each : notebooks) {
        out.println("  " + each.getFileName() + ": " + describe(each));
      }
    }
  }

  private static String describe(Path file) {
    try {
      Notebook notebook = Notebook.read(file);
      long code = notebook.cells().stream().filter(NotebookCell::isCode).count();
      long run =
          notebook.cells().stream().filter(cell -> cell.executionCount().isPresent()).count();
      String title = notebook.title().isEmpty() ? "no title" : notebook.title();
      return "%s (%d code cells, %s)"
          .formatted(title, code, run == 0 ? "not run" : run == code ? "run" : run + " run");
    } catch (IOException unreadable) {
      return "can't be read";
    }
  }
}
