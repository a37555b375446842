package org.taketally.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.notebook.kernel.KernelClient;
import org.taketally.notebook.kernel.wire.ConnectionFile;
import org.taketally.notebook.kernel.wire.Message;

/** The kernel as a process of its own, from the classes under test. */
@Timeout(120)
class KernelMainTest {

  @TempDir private Path folder;

  private Process process;

  @AfterEach
  void end() {
    if (process != null) {
      process.destroyForcibly();
    }
  }

  private static String classpath() {
    return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
        .map(place -> Path.of(place).toAbsolutePath().toString())
        .collect(Collectors.joining(File.pathSeparator));
  }

  private ConnectionFile start(String... options) throws Exception {
    ConnectionFile connection = ConnectionFile.unused();
    Path file = Files.writeString(folder.resolve("connection.json"), connection.toJson());
    List<String> command =
        Stream.of(
                Stream.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()),
                Stream.of(options),
                Stream.of("-cp", classpath(), KernelMain.class.getName(), file.toString()))
            .flatMap(words -> words)
            .toList();
    process =
        new ProcessBuilder(command)
            .redirectOutput(folder.resolve("out.txt").toFile())
            .redirectError(folder.resolve("err.txt").toFile())
            .start();
    return connection;
  }

  @Test
  void interrupting_every_thread_ends_nothing() throws Exception {
    try (KernelClient client = new KernelClient(start()).awaitReady()) {
      for (int time = 0; time < 3; time++) {
        client.execute(
            "for (Thread each : Thread.getAllStackTraces().keySet())"
                + " if (each != Thread.currentThread()) each.interrupt();");
        Thread.sleep(100);
        assertThat(client.execute("40 + 2").result()).isEqualTo("42");
        assertThat(client.execute("System.out.print(1)").printed("stdout")).isEqualTo("1");
      }
      Message cell = client.send("execute_request", KernelClient.code("while (true) { }"));
      Thread.sleep(300);
      client.controlReply(client.sendControl("interrupt_request", new JsonObject()));
      assertThat(client.reply(cell).get("ename").getAsString()).isEqualTo("Interrupted");
      client.published(cell);
      assertThat(client.execute("2 + 2").result()).isEqualTo("4");
      client.sendControl("shutdown_request", new JsonObject());
      assertThat(process.waitFor(10, TimeUnit.SECONDS)).isTrue();
      assertThat(process.exitValue()).isZero();
    }
  }

  @Test
  void ends_with_the_program_it_serves_even_if_that_ended_before() throws Exception {
    Process parent = new ProcessBuilder("true").start();
    parent.waitFor();
    start("-Dtaketally.parent=" + parent.pid());
    assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
  }
}
