package org.taketally.notebook.kernel.engine;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import jdk.jshell.JShell;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.spi.ExecutionControl;
import jdk.jshell.spi.ExecutionControlProvider;
import jdk.jshell.spi.ExecutionEnv;

/** One JShell with what we need of it. Everything but {@link #control} belongs to one thread. */
final class Session implements AutoCloseable {

  final JShell shell;
  final SourceCodeAnalysis analysis;
  final CellControl control;
  final Origins origins = new Origins();
  private final List<String> added = new ArrayList<>();

  Session(EngineOptions options, UserThreads threads) {
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
  }

  private void importAll(List<String> names) {
    for (String name : names) {
      shell
          .eval("import " + name + ";")
          .forEach(
              event -> {
                if (shell.diagnostics(event.snippet()).anyMatch(jdk.jshell.Diag::isError)) {
                  throw new IllegalArgumentException("cannot import " + name);
                }
              });
    }
  }

  /** Adds a jar or a folder of classes. */
  void add(Path place) {
    shell.addToClasspath(place.toString());
    added.add(place.toString());
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
