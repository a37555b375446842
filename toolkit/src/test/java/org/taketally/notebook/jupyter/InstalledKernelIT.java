package org.taketally.notebook.jupyter;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.notebook.kernel.KernelClient;
import org.taketally.notebook.kernel.KernelClient.Outcome;
import org.taketally.notebook.kernel.wire.ConnectionFile;
import org.taketally.notebook.kernel.wire.Message;

/** The kernel as a process, started by the command that its kernel.json gives to Jupyter. */
@Timeout(120)
class InstalledKernelIT {

  @TempDir private Path folder;

  private Process process;

  @AfterEach
  void end() {
    if (process != null) {
      process.destroyForcibly();
    }
  }

  private static JsonObject spec() throws Exception {
    String text = Files.readString(Jupyter.kernel().resolve("kernel.json"));
    return JsonParser.parseString(text).getAsJsonObject();
  }

  private List<String> command(Path connectionFile) throws Exception {
    List<String> command = new ArrayList<>();
    for (var word : spec().getAsJsonArray("argv")) {
      command.add(word.getAsString().replace("{connection_file}", connectionFile.toString()));
    }
    return command;
  }

  private KernelClient start(String parentProcess) throws Exception {
    return start(List.of(), parentProcess);
  }

  /**
   * Starts a kernel.
   *
   * @param through what starts it, before its own command: ends by running that in its own place
   * @param parentProcess id of the process without which it ends, or empty
   */
  private KernelClient start(List<String> through, String parentProcess) throws Exception {
    ConnectionFile connection = ConnectionFile.unused();
    Path file = Files.writeString(folder.resolve("connection.json"), connection.toJson());
    List<String> command = new ArrayList<>(through);
    command.addAll(command(file));
    ProcessBuilder builder = Jupyter.process(folder, command);
    if (!parentProcess.isEmpty()) {
      builder.environment().put("JPY_PARENT_PID", parentProcess);
    }
    process =
        builder
            .redirectOutput(folder.resolve("out.txt").toFile())
            .redirectError(folder.resolve("err.txt").toFile())
            .start();
    return new KernelClient(connection).awaitReady();
  }

  private boolean endsWithin(long seconds) throws InterruptedException {
    return process.waitFor(seconds, TimeUnit.SECONDS);
  }

  @Test
  void is_described_for_jupyter() throws Exception {
    JsonObject spec = spec();
    assertThat(spec.get("display_name").getAsString()).isEqualTo("Taketally (Java)");
    assertThat(spec.get("language").getAsString()).isEqualTo("java");
    assertThat(spec.get("interrupt_mode").getAsString()).isEqualTo("message");
    assertThat(Jupyter.kernel())
        .isDirectoryContaining("glob:**/taketally.jar")
        .isDirectoryContaining("glob:**/logo-32x32.png")
        .isDirectoryContaining("glob:**/logo-64x64.png")
        .isDirectoryContaining("glob:**/logo-svg.svg");
  }

  @Test
  void its_class_archive_is_used() throws Exception {
    Path archive = Jupyter.kernel().resolve("classes.jsa");
    List<String> command =
        Jupyter.java(
            "-XX:SharedArchiveFile=" + archive,
            "-Xshare:on",
            "-XX:+UseSerialGC",
            "-Xlog:class+load:file=" + folder.resolve("classes.txt"),
            "-cp",
            Jupyter.kernel().resolve("taketally.jar").toString(),
            "org.taketally.notebook.KernelMain");
    Jupyter.run(folder, command.toArray(String[]::new));
    assertThat(Files.readString(folder.resolve("classes.txt")))
        .containsPattern("org.taketally.notebook.KernelMain source: shared objects file \\(top\\)");
  }

  @Test
  void shuts_down_when_asked() throws Exception {
    try (KernelClient client = start("")) {
      assertThat(client.execute("1 + 1").result()).isEqualTo("2");
      JsonObject restart = new JsonObject();
      restart.addProperty("restart", true);
      JsonObject reply = client.controlReply(client.sendControl("shutdown_request", restart));
      assertThat(reply.get("restart").getAsBoolean()).isTrue();
      assertThat(endsWithin(5)).isTrue();
      assertThat(process.exitValue()).isZero();
    }
  }

  @Test
  void shuts_down_although_threads_and_a_cell_still_run() throws Exception {
    try (KernelClient client = start("")) {
      client.execute("Thread busy = new Thread(() -> { while (true) { } });\nbusy.start();");
      client.send("execute_request", KernelClient.code("while (true) { }"));
      Thread.sleep(300);
      client.sendControl("shutdown_request", new JsonObject());
      assertThat(endsWithin(10)).isTrue();
    }
  }

  @Test
  void ends_when_the_process_that_started_it_is_gone() throws Exception {
    Process parent = new ProcessBuilder("sleep", "1000").start();
    try (KernelClient client = start(String.valueOf(parent.pid()))) {
      assertThat(client.execute("1 + 1").result()).isEqualTo("2");
      parent.destroyForcibly().waitFor();
      assertThat(endsWithin(10)).isTrue();
    }
  }

  private static Message endlessCell(KernelClient client) throws Exception {
    client.execute("int kept = 5;");
    Message cell =
        client.send(
            "execute_request",
            KernelClient.code("System.out.println(\"begun\");\nwhile (true) { }"));
    client.awaitPublished(message -> message.type().equals("stream"));
    return cell;
  }

  @Test
  void a_signal_interrupts_too() throws Exception {
    try (KernelClient client = start(Signals.interruptible(), "")) {
      Message cell = endlessCell(client);
      new ProcessBuilder("kill", "-INT", String.valueOf(process.pid())).start().waitFor();
      assertThat(client.reply(cell).get("ename").getAsString()).isEqualTo("Interrupted");
      client.published(cell);
      assertThat(client.execute("kept").result()).isEqualTo("5");
    }
  }

  /**
   * As a shell starts what it puts in the background: Java then never hears of the signal, and
   * nothing written in Java changes that. Jupyter interrupts this kernel by message.
   */
  @Test
  void a_message_interrupts_where_the_signal_is_ignored_from_the_start() throws Exception {
    try (KernelClient client = start(Signals.UNINTERRUPTIBLE, "")) {
      Message cell = endlessCell(client);
      assertThat(Signals.ignoresInterrupts(process.pid())).isNotEqualTo(Optional.of(false));
      client.sendControl("interrupt_request", new JsonObject());
      assertThat(client.reply(cell).get("ename").getAsString()).isEqualTo("Interrupted");
      client.published(cell);
      assertThat(client.execute("kept").result()).isEqualTo("5");
    }
  }

  @Test
  void a_library_that_ends_the_process_is_held_every_time() throws Exception {
    try (KernelClient client = start("")) {
      for (int time = 1; time <= 2; time++) {
        Outcome outcome = client.execute("Runtime.getRuntime().exit(" + time + ")");
        assertThat(outcome.reply().get("ename").getAsString()).endsWith("ExitRefused");
        assertThat(outcome.traceback()).contains("cell [");
      }
      assertThat(client.execute("\"alive\"").result()).isEqualTo("alive");
      client.sendControl("shutdown_request", new JsonObject());
      assertThat(endsWithin(10)).isTrue();
    }
  }

  @Test
  void a_loop_that_catches_everything_does_not_hold_the_kernel() throws Exception {
    try (KernelClient client = start("")) {
      Message cell =
          client.send(
              "execute_request",
              KernelClient.code(
                  "while (true) { try { while (true) { } } catch (Throwable all) { } }"));
      Thread.sleep(500);
      client.sendControl("interrupt_request", new JsonObject());
      assertThat(client.reply(cell).get("evalue").getAsString()).startsWith("the cell was stopped");
      client.published(cell);
      assertThat(client.execute("2 + 2").result()).isEqualTo("4");
    }
  }

  @Test
  void documents_the_toolkit_wherever_it_is_installed() throws Exception {
    try (KernelClient client = start("")) {
      String page =
          client
              .execute("TakeModel?")
              .reply()
              .getAsJsonArray("payload")
              .get(0)
              .getAsJsonObject()
              .getAsJsonObject("data")
              .get("text/plain")
              .getAsString();
      assertThat(page.lines().count()).isGreaterThan(3);
    }
  }

  @Test
  void listens_only_on_its_own_machine() throws Exception {
    String open = ConnectionFile.unused().toJson().replace("127.0.0.1", "0.0.0.0");
    Path file = Files.writeString(folder.resolve("open.json"), open);
    var ran = Jupyter.run(folder, command(file).toArray(String[]::new));
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.output()).contains("address \"0.0.0.0\": expected a loopback address");
  }

  @Test
  void says_what_is_wrong_with_a_connection_file() throws Exception {
    String ipc = ConnectionFile.unused().toJson().replace("\"tcp\"", "\"ipc\"");
    Path file = Files.writeString(folder.resolve("ipc.json"), ipc);
    var ran = Jupyter.run(folder, command(file).toArray(String[]::new));
    assertThat(ran.output())
        .contains("transport \"ipc\": expected \"tcp\"; start Jupyter with the tcp transport");
  }
}
