package org.taketally.notebook.kernel.engine.threads;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.taketally.notebook.kernel.engine.output.Output;

/** The system's shell: what it prints is the cell's output; it gets no input. */
public final class Shell {

  private static final int CHARACTERS = 1 << 13;

  /** What runs on in the background may hold the streams open; it isn't waited for longer. */
  private static final long REST_MILLISECONDS = 500;

  private Shell() {}

  /**
   * Runs a script to its end, or until this thread is interrupted: then it is ended.
   *
   * @param script lines of the shell
   * @param output gets what it prints
   * @return its exit status
   * @throws IOException if there is no shell
   * @throws InterruptedException if the cell was stopped
   */
  public static int run(String script, Output output) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(name(), "-c", script).start();
    boolean ended = false;
    try {
      process.getOutputStream().close();
      Thread out = passing(process.getInputStream(), "stdout", output);
      Thread error = passing(process.getErrorStream(), "stderr", output);
      int status = process.waitFor();
      out.join(REST_MILLISECONDS);
      error.join(REST_MILLISECONDS);
      ended = true;
      return status;
    } finally {
      if (!ended) {
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly();
      }
    }
  }

  private static String name() {
    String path = System.getenv().getOrDefault("PATH", "");
    boolean bash =
        Arrays.stream(path.split(File.pathSeparator))
            .anyMatch(folder -> Files.isExecutable(Path.of(folder, "bash")));
    return bash ? "bash" : "sh";
  }

  private static Thread passing(InputStream stream, String name, Output output) {
    Thread passing =
        new SteadyThread(
            () -> {
              char[] some = new char[CHARACTERS];
              try (Reader text = new InputStreamReader(stream, Charset.defaultCharset())) {
                for (int count = text.read(some); count >= 0; count = text.read(some)) {
                  output.print(name, new String(some, 0, count));
                }
              } catch (IOException ended) {
                // with its process
              }
            },
            "output of the shell");
    passing.start();
    return passing;
  }
}
