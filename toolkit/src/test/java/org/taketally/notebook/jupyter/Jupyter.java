package org.taketally.notebook.jupyter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * The packaged program, installed for Jupyter below {@code target}, and Debian's Jupyter itself.
 */
final class Jupyter {

  static final Path ROOT = Path.of(System.getProperty("taketally.root"));
  static final Path JAR = Path.of(System.getProperty("taketally.jar"));
  static final Path TARGET = JAR.getParent();
  static final Path PYTHON = Path.of("/usr/bin/python3");

  private static final Path PREFIX = TARGET.resolve("jupyter");
  private static final long PATIENCE_MINUTES = 5;

  /** Programs that end after seconds: what takes the second compiler longest never pays. */
  private static final String SHORT_LIVED = "-XX:TieredStopAtLevel=1";

  /** What Java says of being given options so. */
  private static final String PICKED_UP = "(?m)^NOTE: Picked up JDK_JAVA_OPTIONS: .*\\R";

  private static Path installed;

  private Jupyter() {}

  /** What a program printed, and its exit status. */
  record Ran(int status, String output) {}

  /** The kernel's folder; installs it once. */
  static synchronized Path kernel() throws Exception {
    if (installed == null) {
      Ran ran = taketally(TARGET, "notebook", "install", "--prefix", PREFIX.toString());
      assertThat(ran.status()).as(ran.output()).isZero();
      installed = PREFIX.resolve("share/jupyter/kernels/taketally");
    }
    return installed;
  }

  /** Skips the test where something is absent; fails where nothing may be skipped unseen. */
  static void require(String what, Path... files) {
    for (Path file : files) {
      boolean there = Files.exists(file);
      if (!there && "true".equals(System.getenv("CI"))) {
        fail(what + " is absent: no " + file);
      }
      assumeTrue(there, () -> what + " is absent, so this is not tested: no " + file);
    }
  }

  static void requirePythonModule(String module) throws Exception {
    require("Python", PYTHON);
    boolean there = run(TARGET, PYTHON.toString(), "-c", "import " + module).status() == 0;
    if (!there && "true".equals(System.getenv("CI"))) {
      fail("the Python module " + module + " is absent");
    }
    assumeTrue(there, "the Python module " + module + " is absent, so this is not tested");
  }

  static List<String> java(String... arguments) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of(arguments));
    return command;
  }

  static Ran taketally(Path folder, String... arguments) throws Exception {
    List<String> command = java("-jar", JAR.toString());
    command.addAll(List.of(arguments));
    return run(folder, command.toArray(String[]::new));
  }

  static ProcessBuilder process(Path folder, List<String> command) throws IOException {
    ProcessBuilder process = new ProcessBuilder(command).directory(folder.toFile());
    Path own = Files.createDirectories(TARGET.resolve("jupyter-home"));
    process.environment().put("JDK_JAVA_OPTIONS", SHORT_LIVED);
    process.environment().put("JUPYTER_PATH", PREFIX.resolve("share/jupyter").toString());
    process.environment().put("JUPYTER_CONFIG_DIR", own.resolve("config").toString());
    process.environment().put("JUPYTER_RUNTIME_DIR", own.resolve("runtime").toString());
    process.environment().put("JUPYTER_DATA_DIR", own.resolve("data").toString());
    process.environment().put("IPYTHONDIR", own.resolve("ipython").toString());
    return process;
  }

  static Ran run(Path folder, String... command) throws Exception {
    Path output = Files.createTempFile(Files.createDirectories(TARGET), "run", ".txt");
    Process process =
        process(folder, List.of(command))
            .redirectErrorStream(true)
            .redirectOutput(output.toFile())
            .start();
    try {
      if (!process.waitFor(PATIENCE_MINUTES, TimeUnit.MINUTES)) {
        process.destroyForcibly();
        fail(String.join(" ", command) + " did not end: " + Files.readString(output));
      }
      String printed = Files.readString(output, StandardCharsets.UTF_8);
      return new Ran(process.exitValue(), printed.replaceAll(PICKED_UP, ""));
    } finally {
      Files.deleteIfExists(output);
    }
  }
}
