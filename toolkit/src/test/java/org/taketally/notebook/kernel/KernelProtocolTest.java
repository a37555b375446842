package org.taketally.notebook.kernel;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.taketally.notebook.kernel.KernelClient.Outcome;
import org.taketally.notebook.kernel.engine.EngineOptions;
import org.taketally.notebook.kernel.wire.ConnectionFile;
import org.taketally.notebook.kernel.wire.Message;

/**
 * A real kernel on loopback sockets, and what a frontend sees of it. Reference: Messaging in
 * Jupyter, version 5.3.
 */
@Timeout(120)
class KernelProtocolTest {

  private static final List<String> LOG = new CopyOnWriteArrayList<>();
  private static Kernel kernel;
  private static KernelClient client;

  @BeforeAll
  static void start() throws Exception {
    ConnectionFile connection = ConnectionFile.unused();
    kernel =
        Kernel.start(connection, new KernelSetup("Test", "1", EngineOptions.usual(), LOG::add));
    client = new KernelClient(connection).awaitReady();
  }

  @AfterAll
  static void stop() {
    client.close();
    kernel.close();
  }

  private static JsonObject json(Object... namesAndValues) {
    JsonObject json = new JsonObject();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      String name = (String) namesAndValues[i];
      Object value = namesAndValues[i + 1];
      if (value instanceof Number number) {
        json.addProperty(name, number);
      } else if (value instanceof Boolean flag) {
        json.addProperty(name, flag);
      } else {
        json.addProperty(name, (String) value);
      }
    }
    return json;
  }

  @Test
  void says_what_it_is() throws Exception {
    JsonObject info = client.ask("kernel_info_request", new JsonObject());
    assertThat(info.get("status").getAsString()).isEqualTo("ok");
    assertThat(info.get("protocol_version").getAsString()).isEqualTo("5.3");
    assertThat(info.get("implementation").getAsString()).isEqualTo("test");
    JsonObject language = info.getAsJsonObject("language_info");
    assertThat(language.get("name").getAsString()).isEqualTo("java");
    assertThat(language.get("file_extension").getAsString()).isEqualTo(".java");
    assertThat(language.get("version").getAsString())
        .isEqualTo(System.getProperty("java.runtime.version"));
  }

  @Test
  void heart_beats() {
    assertThat(client.beats()).isTrue();
  }

  @Test
  void publishes_busy_input_result_idle_in_this_order() throws Exception {
    Outcome outcome = client.execute("40 + 2");
    assertThat(outcome.published())
        .extracting(Message::type)
        .containsExactly("status", "execute_input", "execute_result", "status");
    assertThat(outcome.result()).isEqualTo("42");
    assertThat(outcome.reply().get("execution_count"))
        .isEqualTo(outcome.of("execute_input").get(0).get("execution_count"))
        .isEqualTo(outcome.of("execute_result").get(0).get("execution_count"));
  }

  @Test
  void last_expression_shows_unless_it_ends_with_a_semicolon() throws Exception {
    assertThat(client.execute("int shown = 3;\nshown * 2").result()).isEqualTo("6");
    assertThat(client.execute("shown * 2;").of("execute_result")).isEmpty();
    assertThat(client.execute("shown = 5").of("execute_result")).isEmpty();
    assertThat(client.execute("shown // the value").result()).isEqualTo("5");
  }

  @Test
  void silent_cells_leave_no_trace() throws Exception {
    JsonObject content = KernelClient.code("int quiet = 8; System.out.println(quiet); quiet");
    content.addProperty("silent", true);
    int before = client.execute("1").reply().get("execution_count").getAsInt();
    Outcome outcome = client.execute(content);
    assertThat(outcome.status()).isEqualTo("ok");
    assertThat(outcome.published()).extracting(Message::type).containsExactly("status", "status");
    Outcome after = client.execute("quiet");
    assertThat(after.result()).isEqualTo("8");
    assertThat(after.reply().get("execution_count").getAsInt()).isEqualTo(before + 1);
    assertThat(
            inputs(
                client.ask(
                    "history_request",
                    json("hist_access_type", "search", "pattern", "*int quiet*"))))
        .isEmpty();
  }

  @Test
  void cells_not_stored_keep_the_count() throws Exception {
    int before = client.execute("1").reply().get("execution_count").getAsInt();
    JsonObject content = KernelClient.code("\"not stored\"");
    content.addProperty("store_history", false);
    Outcome outcome = client.execute(content);
    assertThat(outcome.result()).isEqualTo("not stored");
    assertThat(outcome.reply().get("execution_count").getAsInt()).isEqualTo(before);
  }

  @Test
  void user_expressions_are_evaluated_after_the_cell() throws Exception {
    JsonObject content = KernelClient.code("int budsticks = 12;");
    content.add("user_expressions", json("double", "budsticks * 2", "wrong", "budsticks / 0"));
    JsonObject values = client.execute(content).reply().getAsJsonObject("user_expressions");
    JsonObject good = values.getAsJsonObject("double");
    assertThat(good.get("status").getAsString()).isEqualTo("ok");
    assertThat(good.getAsJsonObject("data").get("text/plain").getAsString()).isEqualTo("24");
    JsonObject wrong = values.getAsJsonObject("wrong");
    assertThat(wrong.get("status").getAsString()).isEqualTo("error");
    assertThat(wrong.get("ename").getAsString()).isEqualTo("java.lang.ArithmeticException");
  }

  private static List<String> inputs(JsonObject historyReply) {
    List<String> inputs = new ArrayList<>();
    for (var entry : historyReply.getAsJsonArray("history")) {
      inputs.add(entry.getAsJsonArray().get(2).getAsString());
    }
    return inputs;
  }

  @Test
  void history_gives_tail_range_and_search() throws Exception {
    client.execute("String a1 = \"graft 1\";");
    int line = client.execute("a1 + \"!\"").reply().get("execution_count").getAsInt();
    client.execute("a1 + \"!\"");
    JsonObject tail = client.ask("history_request", json("hist_access_type", "tail", "n", 2));
    assertThat(tail.get("status").getAsString()).isEqualTo("ok");
    assertThat(inputs(tail)).containsExactly("a1 + \"!\"", "a1 + \"!\"");
    JsonObject range =
        client.ask(
            "history_request",
            json(
                "hist_access_type",
                "range",
                "session",
                0,
                "start",
                line - 1,
                "stop",
                line + 1,
                "output",
                true));
    JsonArray second = range.getAsJsonArray("history").get(1).getAsJsonArray();
    assertThat(range.getAsJsonArray("history")).hasSize(2);
    assertThat(second.get(1).getAsInt()).isEqualTo(line);
    assertThat(KernelClient.texts(second.get(2).getAsJsonArray()))
        .containsExactly("a1 + \"!\"", "graft 1!");
    assertThat(
            inputs(
                client.ask(
                    "history_request", json("hist_access_type", "search", "pattern", "a1*\"?\""))))
        .containsExactly("a1 + \"!\"", "a1 + \"!\"");
    assertThat(
            inputs(
                client.ask(
                    "history_request",
                    json("hist_access_type", "search", "pattern", "*a1*", "unique", true, "n", 5))))
        .containsExactly("String a1 = \"graft 1\";", "a1 + \"!\"");
  }

  @Test
  void errors_name_the_class_the_message_the_cause_and_the_line() throws Exception {
    int cell =
        client
            .execute(
                "double share(int takes, int grafts) {\n"
                    + "  if (grafts == 0) throw new IllegalArgumentException(\"no grafts\", new"
                    + " RuntimeException(\"empty block\"));\n"
                    + "  return takes / (double) grafts;\n"
                    + "}")
            .reply()
            .get("execution_count")
            .getAsInt();
    Outcome outcome = client.execute("\nshare(0, 0)");
    assertThat(outcome.status()).isEqualTo("error");
    JsonObject published = outcome.of("error").get(0);
    assertThat(published.get("ename").getAsString())
        .isEqualTo("java.lang.IllegalArgumentException");
    assertThat(published.get("evalue").getAsString()).isEqualTo("no grafts");
    assertThat(outcome.reply().get("ename")).isEqualTo(published.get("ename"));
    assertThat(outcome.traceback())
        .startsWith(
            "java.lang.IllegalArgumentException: no grafts\n  at share (cell ["
                + cell
                + "], line 2)\n      if (grafts == 0)")
        .contains("  at cell [" + (cell + 1) + "], line 2\n")
        .contains("Caused by java.lang.RuntimeException: empty block\n")
        .doesNotContain("org.taketally", "jdk.", "reflect");
  }

  @Test
  void a_declaration_that_fails_is_one_place_in_its_cell() throws Exception {
    Outcome outcome = client.execute("var share =\n    Integer.parseInt(\"seven\");");
    String place = "  at cell [" + outcome.reply().get("execution_count").getAsInt() + "], line 2";
    assertThat(outcome.traceback())
        .contains(place + "\n")
        .doesNotContain("do_it", "$Aux")
        .containsOnlyOnce("  at cell [");
  }

  @Test
  void lambdas_are_named_by_where_they_stand() throws Exception {
    Outcome outcome =
        client.execute(
            "int check(List<Integer> all) {\n  return all.stream().mapToInt(n -> 1 / n).sum();\n}\n"
                + "Stream.of(0).mapToInt(n -> check(List.of(n))).sum()");
    int cell = outcome.reply().get("execution_count").getAsInt();
    assertThat(outcome.traceback())
        .contains("  at lambda in check (cell [" + cell + "], line 2)\n")
        .contains("  at lambda (cell [" + cell + "], line 4)\n");
  }

  @Test
  void compile_errors_point_at_the_place() throws Exception {
    Outcome outcome = client.execute("int fine = 1;\nint wrong = fine + nosuch;");
    assertThat(outcome.reply().get("ename").getAsString()).isEqualTo("CompileError");
    assertThat(outcome.reply().get("evalue").getAsString())
        .endsWith(", line 2: cannot find symbol: variable nosuch");
    assertThat(outcome.traceback())
        .endsWith("    int wrong = fine + nosuch;\n                       ^^^^^^\n");
  }

  @Test
  void nothing_runs_of_a_cell_that_is_not_finished() throws Exception {
    assertThat(client.execute("int halfway = 1;\nfoo(").status()).isEqualTo("error");
    assertThat(client.execute("halfway").status()).isEqualTo("error");
  }

  @Test
  void endless_recursion_has_a_short_traceback() throws Exception {
    Outcome outcome = client.execute("int deep(int n) { return deep(n + 1); }\ndeep(0)");
    assertThat(outcome.reply().get("ename").getAsString())
        .isEqualTo("java.lang.StackOverflowError");
    assertThat(outcome.traceback().lines().count()).isLessThan(30);
    assertThat(outcome.traceback()).contains(" more\n");
  }

  @Test
  void cells_queued_behind_an_error_are_aborted() throws Exception {
    Message failing =
        client.send(
            "execute_request",
            KernelClient.code("Thread.sleep(300); throw new Exception(\"stop here\");"));
    Message queued = client.send("execute_request", KernelClient.code("int neverDeclared = 1;"));
    Message question = client.send("kernel_info_request", new JsonObject());
    Message alsoQueued = client.send("execute_request", KernelClient.code("neverDeclared"));
    assertThat(client.reply(failing).get("status").getAsString()).isEqualTo("error");
    assertThat(client.reply(queued).get("status").getAsString()).isEqualTo("aborted");
    assertThat(client.reply(question).get("status").getAsString()).isEqualTo("ok");
    assertThat(client.reply(alsoQueued).get("status").getAsString()).isEqualTo("aborted");
    assertThat(client.published(alsoQueued)).hasSize(2);
    assertThat(client.execute("neverDeclared").status()).isEqualTo("error");
    assertThat(client.execute("\"serves on\"").result()).isEqualTo("serves on");
  }

  @Test
  void cells_queued_behind_an_error_run_if_so_asked() throws Exception {
    JsonObject tolerant = KernelClient.code("Thread.sleep(200); throw new Exception(\"go on\");");
    tolerant.addProperty("stop_on_error", false);
    Message failing = client.send("execute_request", tolerant);
    Message queued = client.send("execute_request", KernelClient.code("\"ran\""));
    assertThat(client.reply(failing).get("status").getAsString()).isEqualTo("error");
    assertThat(client.reply(queued).get("status").getAsString()).isEqualTo("ok");
    client.published(queued);
  }

  @Test
  void wrong_messages_are_survived() throws Exception {
    Message good = Message.of("kernel_info_request", List.of(), new JsonObject(), new JsonObject());
    List<byte[]> signed = client.encode(good);
    byte[] junk = "junk".getBytes(StandardCharsets.UTF_8);
    byte[] delimiter = signed.get(0);
    client.sendRaw(delimiter, junk, signed.get(2), signed.get(3), signed.get(4), signed.get(5));
    client.sendRaw(junk);
    client.sendRaw(junk, junk, junk, junk, junk, junk, junk, junk);
    client.sendRaw(delimiter, junk);
    client.sendRaw(delimiter);
    Message odd = Message.of("no_such_request", List.of(), new JsonObject(), new JsonObject());
    client.sendRaw(client.encode(odd).toArray(byte[][]::new));
    Message broken =
        Message.of(
            "complete_request",
            List.of(),
            new JsonObject(),
            json("code", "x", "cursor_pos", "many"));
    client.sendRaw(client.encode(broken).toArray(byte[][]::new));
    assertThat(client.execute("\"alive\"").result()).isEqualTo("alive");
    assertThat(LOG)
        .contains(
            "ignored a message: wrong signature",
            "ignored a message: no delimiter <IDS|MSG>",
            "ignored a message: parts are missing",
            "no answer to no_such_request");
  }

  @Test
  void requests_that_can_not_be_served_are_answered_with_the_reason() throws Exception {
    JsonObject completion = client.ask("complete_request", json("code", "x", "cursor_pos", "many"));
    assertThat(completion.get("status").getAsString()).isEqualTo("error");
    assertThat(completion.get("evalue").getAsString())
        .isEqualTo("complete_request could not be served: For input string: \"many\"");
    JsonObject cell = KernelClient.code("int served = 1;");
    JsonObject expressions = new JsonObject();
    expressions.add("odd", new JsonObject());
    cell.add("user_expressions", expressions);
    assertThat(client.ask("execute_request", cell).get("status").getAsString()).isEqualTo("error");
    assertThat(client.execute("served").result()).isEqualTo("1");
  }

  @Test
  void a_value_that_fails_to_be_shown_has_no_frames_of_the_kernel() throws Exception {
    client.execute(
        "class Union { public String toString() { throw new InternalError(\"full\"); } }");
    Outcome outcome = client.execute("new Union()");
    assertThat(outcome.traceback())
        .matches(
            """
            java.lang.InternalError: full
              at Union.toString \\(cell \\[\\d+], line 1\\)
             .*throw new.*
            """);
    assertThat(client.execute("\"alive\"").result()).isEqualTo("alive");
  }

  @Test
  void comms_are_listed_and_refused() throws Exception {
    JsonObject reply = client.ask("comm_info_request", new JsonObject());
    assertThat(reply.get("status").getAsString()).isEqualTo("ok");
    assertThat(reply.getAsJsonObject("comms").size()).isZero();
    client.send("comm_open", json("comm_id", "c1", "target_name", "nobody"));
    Message closed = client.awaitPublished(message -> message.type().equals("comm_close"));
    assertThat(closed.content().get("comm_id").getAsString()).isEqualTo("c1");
  }

  @Test
  void control_channel_answers_while_a_cell_runs() throws Exception {
    Message running = client.send("execute_request", KernelClient.code("Thread.sleep(400);"));
    Message info = client.sendControl("kernel_info_request", new JsonObject());
    assertThat(client.controlReply(info).get("status").getAsString()).isEqualTo("ok");
    assertThat(client.reply(running).get("status").getAsString()).isEqualTo("ok");
    client.published(running);
  }
}
