package org.taketally.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.taketally.notebook.install.JupyterFolders;
import org.taketally.notebook.install.KernelInstall;
import picocli.CommandLine;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code taketally notebook install}. */
@Command(
    name = "install",
    mixinStandardHelpOptions = true,
    description = {
      "Makes the kernel \"Taketally (Java)\" known to Jupyter.",
      "The program is copied, so its jar may be moved or deleted afterwards. Run it again after an"
          + " update of Taketally or Java."
    })
final class NotebookInstallCommand implements Callable<Integer> {

  /** Where to: one of two. */
  private static final class Where {

    @Option(names = "--user", description = "For this user only (the default).")
    private boolean user;

    @Option(
        names = "--prefix",
        paramLabel = "DIR",
        description = "Below DIR/share/jupyter, e.g. /usr/local or a virtual environment.")
    private Path prefix;

    Path jupyterData() {
      return user || prefix == null
          ? JupyterFolders.ofThisMachine().user()
          : JupyterFolders.below(prefix);
    }
  }

  @ArgGroup private Where where = new Where();

  @Option(
      names = "--java-option",
      paramLabel = "OPTION",
      description = "An option for the kernel's Java, e.g. --java-option=-Xmx4g; may be repeated.")
  private List<String> javaOptions = List.of();

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() throws InterruptedException {
    PrintWriter out = spec.commandLine().getOut();
    try {
      KernelInstall.Installed installed = new KernelInstall(where.jupyterData(), javaOptions).run();
      out.println("Installed the kernel \"Taketally (Java)\" in " + installed.folder());
      installed
          .slowStart()
          .ifPresent(
              why -> out.println("It will start about a second slower than it could: " + why));
      out.println("In Jupyter, choose it for a new notebook, or try: jupyter notebook");
      return 0;
    } catch (IOException failure) {
      spec.commandLine().getErr().println("not installed: " + failure.getMessage());
      return 3;
    }
  }
}
