package org.taketally.notebook.kernel;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.io.DataOutputStream;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.taketally.notebook.kernel.KernelClient.Outcome;
import org.taketally.notebook.kernel.engine.EngineOptions;
import org.taketally.notebook.kernel.wire.ConnectionFile;
import org.taketally.notebook.kernel.wire.Message;

/** What once ended a kernel, or spoiled every later cell. Each test has a kernel of its own. */
@Timeout(120)
class KernelEnduresTest {

  private final List<String> log = new CopyOnWriteArrayList<>();
  private ConnectionFile connection;
  private Kernel kernel;
  private KernelClient client;

  @TempDir private Path folder;

  @BeforeEach
  void start() throws Exception {
    connection = ConnectionFile.unused();
    kernel =
        Kernel.start(connection, new KernelSetup("Test", "1", EngineOptions.usual(), log::add));
    client = new KernelClient(connection).awaitReady();
  }

  @AfterEach
  void stop() {
    client.close();
    kernel.close();
  }

  private void assertWorks() throws Exception {
    assertThat(client.execute("40 + 2").result()).isEqualTo("42");
    assertThat(client.execute("System.out.print(\"said\")").printed("stdout")).isEqualTo("said");
    assertThat(client.beats()).isTrue();
  }

  /** Greets as ZeroMQ's own protocol wants it, then announces a frame of a given length. */
  private void announceFrame(int port, String socketType, long length) throws Exception {
    try (Socket raw = new Socket(InetAddress.getLoopbackAddress(), port)) {
      raw.setSoTimeout(10_000);
      DataOutputStream out = new DataOutputStream(raw.getOutputStream());
      InputStream in = raw.getInputStream();
      byte[] greeting = new byte[64];
      greeting[0] = (byte) 0xff;
      greeting[8] = 1;
      greeting[9] = 0x7f;
      greeting[10] = 3;
      System.arraycopy("NULL".getBytes(StandardCharsets.US_ASCII), 0, greeting, 12, 4);
      out.write(greeting);
      in.readNBytes(64);
      byte[] type = socketType.getBytes(StandardCharsets.US_ASCII);
      out.writeByte(4); // a command
      out.writeByte(6 + 12 + 4 + type.length);
      out.writeByte(5);
      out.writeBytes("READY");
      out.writeByte(11);
      out.writeBytes("Socket-Type");
      out.writeInt(type.length);
      out.write(type);
      out.flush();
      in.read();
      out.writeByte(2); // a long frame
      out.writeLong(length);
      out.write(new byte[100]);
      out.flush();
      if (length >= 0) {
        while (in.read() >= 0) {
          // until the kernel hangs up
        }
      }
    }
  }

  /** Lengths that exceed what the process can have, or any array, or are below zero. */
  @ParameterizedTest
  @ValueSource(
      longs = {1L << 30, Integer.MAX_VALUE - 8, Integer.MAX_VALUE, 1L << 31, 1L << 40, -1, -9})
  void a_frame_too_long_ends_its_connection_only(long length) throws Exception {
    announceFrame(connection.shellPort(), "DEALER", length);
    announceFrame(connection.controlPort(), "DEALER", length);
    announceFrame(connection.stdinPort(), "DEALER", length);
    announceFrame(connection.heartbeatPort(), "REQ", length);
    assertWorks();
  }

  @Test
  void standard_streams_set_to_nothing_are_set_back() throws Exception {
    client.execute("System.setOut(null); System.setErr(null); System.setIn(null);");
    assertWorks();
    Outcome both = client.execute("System.setErr(null); System.err.print(\"x\");");
    assertThat(both.reply().get("ename").getAsString()).endsWith("NullPointerException");
    assertWorks();
  }

  @Test
  void a_stream_that_fails_to_flush_harms_no_other_cell() throws Exception {
    client.execute(
        "System.setOut(new java.io.PrintStream(System.out) {"
            + " @Override public void flush() { throw new IllegalStateException(); } });");
    assertWorks();
  }

  @Test
  void output_a_cell_redirects_stays_redirected() throws Exception {
    client.execute("var kept = new java.io.ByteArrayOutputStream(); var before = System.out;");
    client.execute("System.setOut(new java.io.PrintStream(kept, true));");
    assertThat(client.execute("System.out.print(\"aside\")").printed("stdout")).isEmpty();
    assertThat(client.execute("System.setOut(before); kept.toString()").result())
        .isEqualTo("aside");
    assertWorks();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "no jar at all", "PK\3\4 cut off here"})
  void a_file_that_is_no_jar_is_refused(String content) throws Exception {
    Path bad = Files.writeString(folder.resolve("bad.jar"), content);
    Outcome outcome = client.execute("%jars " + bad);
    assertThat(outcome.reply().get("ename").getAsString()).isEqualTo("CommandError");
    assertThat(outcome.reply().get("evalue").getAsString())
        .contains("bad.jar")
        .contains("expected a jar");
    assertWorks();
  }

  @Test
  void a_place_that_is_no_path_is_refused() throws Exception {
    Outcome outcome = client.execute("%jars lib\0x.jar");
    assertThat(outcome.reply().get("ename").getAsString()).isEqualTo("CommandError");
    assertWorks();
  }

  @Test
  void a_message_sent_twice_runs_once() throws Exception {
    client.execute("int runs = 0;");
    Message request =
        Message.of("execute_request", List.of(), new JsonObject(), KernelClient.code("runs++;"));
    byte[][] frames = client.encode(request).toArray(byte[][]::new);
    client.sendRaw(frames);
    client.sendRaw(frames);
    client.reply(request);
    client.published(request);
    assertThat(client.execute("runs").result()).isEqualTo("1");
    assertThat(log).anyMatch(line -> line.contains("sent before"));
  }
}
