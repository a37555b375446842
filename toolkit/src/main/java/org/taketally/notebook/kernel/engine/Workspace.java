package org.taketally.notebook.kernel.engine;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.VarSnippet;
import jdk.jshell.spi.ExecutionControl;
import jdk.jshell.spi.ExecutionControlProvider;
import jdk.jshell.spi.ExecutionEnv;
import org.taketally.notebook.kernel.engine.output.ErrorTexts;
import org.taketally.notebook.kernel.engine.output.Imports;
import org.taketally.notebook.kernel.engine.source.Origins;
import org.taketally.notebook.kernel.engine.threads.CellControl;
import org.taketally.notebook.kernel.engine.threads.SnippetClasses;
import org.taketally.notebook.kernel.engine.threads.UserThreads;

/** One JShell with what we need of it. Everything but {@link #control} belongs to one thread. */
final class Workspace implements AutoCloseable {

  final JShell shell;
  final SourceCodeAnalysis analysis;
  final CellControl control;
  final Origins origins = new Origins();
  final ErrorTexts errors;
  final Words words;
  private final List<String> added = new ArrayList<>();
  private Packages packages;
  private final List<String> notImported = new ArrayList<>();

  Workspace(EngineOptions options, UserThreads threads) {
    control = new CellControl(new SnippetClasses(), threads);
    shell =
        JShell.builder()
            .executionEngine(new InThisProcess(control), Map.of())
            .idGenerator((snippet, number) -> origins.newSnippet(number))
            .compilerOptions("-proc:none", "-Xlint:-options", "-parameters", "-XDuseUnsharedTable")
            .build();
    analysis = shell.sourceCodeAnalysis();
    options.classpath().forEach(this::add);
    importAll(options.imports());
    errors =
        new ErrorTexts(
            origins, new Imports(analysis), options.advice(), new Places(shell, analysis)::located);
    words = new Words(shell, this::valueOf, options.words());
  }

  /** Imports; a name that isn't there is left out, so that the rest can be used. */
  private void importAll(List<String> names) {
    for (String name : names) {
      for (SnippetEvent event : shell.eval("import " + name + ";")) {
        if (event.status() == Snippet.Status.REJECTED) {
          notImported.add(name);
        }
      }
    }
  }

  /** What was to be imported from the beginning, but isn't there. */
  List<String> notImported() {
    return notImported;
  }

  /** The value of a variable as it is, without running any code of it. */
  Object valueOf(VarSnippet variable) {
    shell.varValue(variable);
    return control.value();
  }

  /** Adds a jar or a folder of classes. */
  synchronized void add(Path place) {
    shell.addToClasspath(place.toString());
    added.add(place.toString());
    packages = null;
  }

  /** Packages that can be imported; looked for once, and again when something was added. */
  synchronized Packages packages() {
    if (packages == null) {
      packages = new Packages(added);
    }
    return packages;
  }

  /** What was added to the program's own classes. */
  List<String> added() {
    return added;
  }

  @Override
  public void close() {
    shell.close();
  }

  /** Hands JShell the control made beforehand. */
  private record InThisProcess(CellControl control) implements ExecutionControlProvider {

    @Override
    public String name() {
      return "taketally";
    }

    @Override
    public ExecutionControl generate(ExecutionEnv env, Map<String, String> parameters) {
      return control;
    }
  }
}
