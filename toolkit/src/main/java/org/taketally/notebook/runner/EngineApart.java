package org.taketally.notebook.runner;

import com.google.gson.JsonObject;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.taketally.files.SafeFile;
import org.taketally.files.ThisJava;
import org.taketally.notebook.KernelMain;
import org.taketally.notebook.kernel.KernelSetup;
import org.taketally.notebook.kernel.client.KernelConnection;
import org.taketally.notebook.kernel.engine.output.CellError;
import org.taketally.notebook.kernel.engine.output.CellResult;
import org.taketally.notebook.kernel.wire.ConnectionFile;

/** Runs cells in a kernel of its own process, whose folder is the notebook's. */
final class EngineApart implements CellEngine {

  private static final long END_SECONDS = 5;

  private final CellOutputs outputs;
  private final Path connectionFile;
  private final Process process;
  private final KernelConnection connection;

  EngineApart(CellOutputs outputs, Path folder) {
    this.outputs = outputs;
    try {
      ConnectionFile unused = ConnectionFile.unused();
      connectionFile = Files.createTempFile("taketally-kernel", ".json");
      SafeFile.write(connectionFile, unused.toJson());
      process =
          new ProcessBuilder(command())
              .directory(folder.toFile())
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start();
      connection = KernelConnection.open(unused, process::isAlive);
    } catch (IOException failure) {
      throw new UncheckedIOException(
          "no kernel could be started: " + failure.getMessage(), failure);
    }
  }

  private List<String> command() {
    List<String> command = new ArrayList<>();
    command.add(ThisJava.program().toString());
    command.addAll(KernelMain.JAVA_OPTIONS);
    command.add("-D" + KernelMain.PARENT + "=" + ProcessHandle.current().pid());
    command.addAll(
        List.of("-cp", ownClasspath(), KernelMain.class.getName(), connectionFile.toString()));
    return command;
  }

  /** This program's classes, from wherever the process begins. */
  private static String ownClasspath() {
    return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
        .map(place -> Path.of(place).toAbsolutePath().toString())
        .collect(Collectors.joining(File.pathSeparator));
  }

  @Override
  public CellResult run(int count, String code) {
    try {
      return connection.run(code, outputs);
    } catch (IOException ended) {
      String message = "the kernel's process ended while this cell ran";
      CellError error = new CellError("KernelEnded", message, List.of(message));
      return new CellResult(Optional.empty(), Optional.of(error));
    }
  }

  @Override
  public void interrupt() {
    connection.interrupt();
  }

  @Override
  public JsonObject languageInfo() {
    return KernelSetup.languageInfo();
  }

  @Override
  public void close() {
    connection.close();
    try {
      if (!process.waitFor(END_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
      Files.deleteIfExists(connectionFile);
    } catch (IOException | InterruptedException leftBehind) {
      process.destroyForcibly();
    }
  }
}
