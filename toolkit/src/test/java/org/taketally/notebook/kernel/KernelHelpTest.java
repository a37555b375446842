package org.taketally.notebook.kernel;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.taketally.notebook.kernel.engine.EngineOptions;
import org.taketally.notebook.kernel.wire.ConnectionFile;

/** Completion, inspection and completeness, seen over the wire. */
@Timeout(120)
class KernelHelpTest {

  private static Kernel kernel;
  private static KernelClient client;

  @BeforeAll
  static void start() throws Exception {
    ConnectionFile connection = ConnectionFile.unused();
    kernel =
        Kernel.start(
            connection,
            new KernelSetup(
                "Test",
                "1",
                EngineOptions.usual().importing(List.of("org.taketally.terms.*")),
                line -> {}));
    client = new KernelClient(connection).awaitReady();
  }

  @AfterAll
  static void stop() {
    client.close();
    kernel.close();
  }

  private static List<String> matches(JsonObject reply) {
    return KernelClient.texts(reply.getAsJsonArray("matches"));
  }

  @Test
  void completes_members_and_replaces_the_whole_identifier() throws Exception {
    String code = "\"scion\".subStr + 1";
    JsonObject reply = client.at("complete_request", code, code.indexOf("Str"));
    assertThat(matches(reply)).contains("substring(", "subSequence(");
    assertThat(reply.get("cursor_start").getAsInt()).isEqualTo(code.indexOf("subStr"));
    assertThat(reply.get("cursor_end").getAsInt()).isEqualTo(code.indexOf(" + 1"));
  }

  @Test
  void counts_places_in_code_points() throws Exception {
    String code = "String tree = \"🌳🌳\"; tree.len";
    int end = code.codePointCount(0, code.length());
    JsonObject reply = client.at("complete_request", code, end);
    assertThat(matches(reply)).contains("length()");
    assertThat(reply.get("cursor_start").getAsInt()).isEqualTo(end - 3);
    assertThat(reply.get("cursor_end").getAsInt()).isEqualTo(end);
  }

  @Test
  void completes_names_of_earlier_cells_and_of_this_one() throws Exception {
    client.execute("double budwoodDays = 3;");
    assertThat(matches(client.at("complete_request", "budwoo", 6))).containsExactly("budwoodDays");
    String code = "int budwoodBags = 2;\nbudwoo";
    assertThat(matches(client.at("complete_request", code, code.length())))
        .containsExactly("budwoodBags", "budwoodDays");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "for (int batch = 0; batch < 3; ba | batch",
        "for (String batch : List.of()) { ba | batch",
        "List.of(1).forEach(batch -> { int bags = batch; ba | batch bags",
        "int grafts(int bags) { int batch = 1; for (int bad = 0; ; ) { } ba | bags batch",
        "Object o = 1; if (o instanceof Integer bags && ba | bags",
        "class Bench { int bags; int all(int batch) { return ba | bags batch",
        "{ int bags = 1; { int batch = 2; } ba | bags",
      })
  void completes_names_declared_in_unfinished_code(String code, String names) throws Exception {
    JsonObject reply = client.at("complete_request", code, code.length());
    assertThat(matches(reply)).containsExactly(names.split(" "));
    assertThat(reply.get("cursor_start").getAsInt()).isEqualTo(code.length() - 2);
  }

  @Test
  void completes_no_names_in_a_string() throws Exception {
    String code = "{ int bags = 1; String s = \"\\\"ba";
    assertThat(matches(client.at("complete_request", code, code.length()))).isEmpty();
  }

  @Test
  void completes_commands() throws Exception {
    JsonObject reply = client.at("complete_request", "int x = 1;\n%ja", 14);
    assertThat(matches(reply)).containsExactly("%jars");
    assertThat(reply.get("cursor_start").getAsInt()).isEqualTo(11);
    JsonObject none = client.at("complete_request", "%jars li", 8);
    assertThat(none.get("status").getAsString()).isEqualTo("ok");
    assertThat(matches(none)).isEmpty();
  }

  private static String inspected(String code, int cursor) throws Exception {
    JsonObject reply = client.at("inspect_request", code, cursor);
    assertThat(reply.get("status").getAsString()).isEqualTo("ok");
    assertThat(reply.get("found").getAsBoolean()).as("found").isTrue();
    return reply.getAsJsonObject("data").get("text/plain").getAsString();
  }

  @Test
  void tells_a_variables_type_and_value() throws Exception {
    client.execute("Map<String, Integer> takes = Map.of(\"Halden seedling\", 41);");
    assertThat(inspected("takes", 5)).isEqualTo("Map<String, Integer> takes\n{Halden seedling=41}");
    assertThat(inspected("takes.size()", 2)).startsWith("Map<String, Integer> takes");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Problem | 7 | Something wrong, or worth a look, in a file of records",
        "Problem | 0 | Something wrong, or worth a look, in a file of records",
        "new Problem( | 12 | 1-based line in the file",
        "Severity.ERROR | 14 | Severity",
        "Interval.class | 3 | Interval",
      })
  void tells_documentation_of_our_classes(String code, int cursor, String text) throws Exception {
    assertThat(inspected(code, cursor)).contains(text);
  }

  @Test
  void tells_documentation_of_our_members_behind_the_name() throws Exception {
    client.execute(
        "Problem problem = new Problem(Severity.NOTE, \"a.csv\", 0, \"\", \"x\", \"\", \"\");");
    assertThat(inspected("problem.sentence", 16))
        .contains("sentence()", "The problem in one sentence, as printed.")
        .doesNotContain("{@code", "<p>");
  }

  @Test
  void tells_signatures_of_java_itself() throws Exception {
    assertThat(inspected("Math.max", 8)).contains("int Math.max(int a, int b)");
  }

  @Test
  void finds_nothing_where_there_is_nothing() throws Exception {
    JsonObject reply = client.at("inspect_request", "nosuchname", 4);
    assertThat(reply.get("found").getAsBoolean()).isFalse();
    assertThat(reply.getAsJsonObject("data").size()).isZero();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "1 + 1 | complete",
        "int x = 3; | complete",
        "import java.util.*; | complete",
        "record Bud(int n) { } | complete",
        "if (true) { } | complete",
        "var list = new ArrayList<String>() | complete",
        "%jars lib.jar | complete",
        "for (int i = 0; i < 3; i++) { | incomplete",
        "foo(1, | incomplete",
        "x + | incomplete",
        "class Bud { | incomplete",
        "/* begun | incomplete",
        "int = = 3; | invalid",
        "} | invalid",
        "int a b; | invalid",
        "else { } | invalid",
        "\"no end | invalid",
      })
  void tells_whether_code_is_complete(String code, String status) throws Exception {
    JsonObject content = new JsonObject();
    content.addProperty("code", code);
    JsonObject reply = client.ask("is_complete_request", content);
    assertThat(reply.get("status").getAsString()).isEqualTo(status);
    assertThat(reply.has("indent")).isEqualTo(status.equals("incomplete"));
  }

  @Test
  void indents_the_next_line() throws Exception {
    JsonObject content = new JsonObject();
    content.addProperty("code", "if (true) {\n  while (true) {");
    assertThat(client.ask("is_complete_request", content).get("indent").getAsString())
        .isEqualTo("      ");
  }
}
