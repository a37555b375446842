package org.taketally.notebook.kernel;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.taketally.notebook.ToolkitKernel;
import org.taketally.notebook.kernel.KernelClient.Outcome;
import org.taketally.notebook.kernel.wire.ConnectionFile;

/** What makes work in cells easy: functions, commands, completion, readable values and errors. */
@Timeout(120)
class KernelConveniencesTest {

  private static Kernel kernel;
  private static KernelClient client;

  @TempDir private static Path folder;

  @BeforeAll
  static void start() throws Exception {
    ConnectionFile connection = ConnectionFile.unused();
    kernel =
        Kernel.start(
            connection, new KernelSetup("Test", "1", ToolkitKernel.setup().engine(), line -> {}));
    client = new KernelClient(connection).awaitReady();
  }

  @AfterAll
  static void stop() {
    client.close();
    kernel.close();
  }

  private static JsonObject data(JsonObject content) {
    return content.getAsJsonObject("data");
  }

  private static List<String> matches(String code) throws Exception {
    JsonObject reply = client.at("complete_request", code, code.codePointCount(0, code.length()));
    return KernelClient.texts(reply.getAsJsonArray("matches"));
  }

  @Test
  void a_form_can_be_chosen() throws Exception {
    JsonObject html =
        data(client.execute("render(\"<b>41</b>\", \"text/html\")").of("execute_result").get(0));
    assertThat(html.get("text/html").getAsString()).isEqualTo("<b>41</b>");
    assertThat(html.get("text/plain").getAsString()).isEqualTo("41");
    JsonObject svg =
        data(
            client
                .execute("display(\"<svg><title>Takes</title></svg>\", \"image/svg+xml\");")
                .of("display_data")
                .get(0));
    assertThat(svg.keySet()).containsExactlyInAnyOrder("image/svg+xml", "text/plain");
    assertThat(svg.get("text/plain").getAsString()).isEqualTo("Takes");
    assertThat(
            client.execute("render(List.of(1), \"image/png\")").reply().get("evalue").getAsString())
        .contains("can't be shown as image/png; it has: text/plain");
  }

  /** Exported and untrusted pages are cleaned of SVG; a picture of it within HTML stays. */
  @Test
  void a_figure_comes_as_svg_as_picture_in_html_and_as_png() throws Exception {
    JsonObject shown =
        data(
            client
                .execute(
                    "\"<svg width=\\\"40\\\" height=\\\"20\\\"><title>Takes &lt; 5</title><circle"
                        + " r=\\\"3\\\" fill=\\\"#112233\\\"/></svg>\"")
                .of("execute_result")
                .get(0));
    assertThat(shown.get("image/svg+xml").getAsString()).contains("<circle");
    String html = shown.get("text/html").getAsString();
    assertThat(html).startsWith("<img alt=\"Takes &lt; 5\" width=\"40\"");
    String picture = html.replaceFirst("(?s).*base64,([^\"]*)\".*", "$1");
    assertThat(new String(Base64.getDecoder().decode(picture), StandardCharsets.UTF_8))
        .startsWith("<svg xmlns=\"http://www.w3.org/2000/svg\" width")
        .contains("<circle");
    assertThat(shown.get("image/png").getAsString()).startsWith("iVBORw0KGgo");
    JsonObject odd =
        data(client.execute("svg(\"<svg><image/></svg>\")").of("execute_result").get(0));
    assertThat(odd.keySet()).containsExactlyInAnyOrder("image/svg+xml", "text/html", "text/plain");
  }

  @Test
  void a_display_is_updated_by_its_name() throws Exception {
    client.execute("String shown = display(\"one\");");
    Outcome outcome = client.execute("updateDisplay(shown, \"two\");");
    JsonObject update = outcome.of("update_display_data").get(0);
    assertThat(data(update).get("text/plain").getAsString()).isEqualTo("two");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"display(41)", "System.out.printf(\"%d%n\", 41)", "System.out.append(\"41\")"})
  void what_display_and_printf_return_is_not_shown(String code) throws Exception {
    assertThat(client.execute(code).of("execute_result")).isEmpty();
  }

  @Test
  void a_name_of_a_display_is_shown_when_asked_for() throws Exception {
    client.execute("String name = display(1);");
    assertThat(client.execute("name").result()).hasSize(36);
    assertThat(client.execute("name.length()").result()).isEqualTo("36");
  }

  @Test
  void a_cell_can_be_html_or_markdown() throws Exception {
    Outcome html = client.execute("%%html\n<p>\n int x = <b>\n</p>");
    assertThat(data(html.of("display_data").get(0)).get("text/html").getAsString())
        .isEqualTo("<p>\n int x = <b>\n</p>");
    Outcome markdown = client.execute("%%markdown\n# Take");
    assertThat(data(markdown.of("display_data").get(0)).get("text/markdown").getAsString())
        .isEqualTo("# Take");
    assertThat(client.execute("%%nosuch\nx").reply().get("evalue").getAsString())
        .contains("no cell begins with %%nosuch; %help lists those that do");
  }

  @Test
  void a_cell_can_be_timed_and_keeps_its_lines() throws Exception {
    Outcome outcome = client.execute("%%time\nint timed = 6 * 7;\ntimed");
    assertThat(outcome.result()).isEqualTo("42");
    assertThat(outcome.printed("stdout")).contains("this cell took ");
    assertThat(client.execute("%%time\n\nint t = \"x\";").reply().get("evalue").getAsString())
        .contains("line 3");
  }

  @Test
  void the_shell_runs_lines_and_cells() throws Exception {
    assertThat(client.execute("!echo buds $((2 + 3))").printed("stdout")).isEqualTo("buds 5\n");
    Outcome cell = client.execute("%%bash\nfor i in 1 2; do echo n$i; done\necho bad >&2\nexit 3");
    assertThat(cell.printed("stdout")).isEqualTo("n1\nn2\n");
    assertThat(cell.printed("stderr")).isEqualTo("bad\n");
    assertThat(cell.reply().get("evalue").getAsString()).contains("the shell ended with status 3");
    assertThat(client.execute("int after = 1;\n!echo $((1 + 1))\nafter").result()).isEqualTo("1");
  }

  @Test
  void not_in_java_stays_java() throws Exception {
    client.execute("boolean ready = true;");
    assertThat(client.execute("!ready").result()).isEqualTo("false");
    assertThat(client.execute("!List.of().isEmpty()").result()).isEqualTo("false");
    assertThat(client.execute("boolean fresh = true;\n!fresh").result()).isEqualTo("false");
  }

  @Test
  void a_shell_that_runs_on_is_stopped() throws Exception {
    var cell = client.send("execute_request", KernelClient.code("!sleep 100"));
    Thread.sleep(500);
    client.controlReply(client.sendControl("interrupt_request", new JsonObject()));
    assertThat(client.reply(cell).get("evalue").getAsString()).contains("the cell was stopped");
    client.published(cell);
  }

  @ParameterizedTest
  @ValueSource(strings = {"?Interval", "Interval?", "??Interval", " ? Interval "})
  void a_question_mark_before_or_behind_a_name_opens_a_page(String code) throws Exception {
    JsonObject page =
        client.execute(code).reply().getAsJsonArray("payload").get(0).getAsJsonObject();
    assertThat(data(page).get("text/plain").getAsString()).contains("Interval");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "import java. | util",
        "import java.ut | util",
        "import org.taketally. | records",
        "import org.taketally.answers. | counts",
        "import tech. | tablesaw",
        "new java.util.con | concurrent",
        "import java.util.concurrent.at | atomic",
      })
  void completes_packages(String code, String part) throws Exception {
    assertThat(matches(code)).contains(part);
  }

  @Test
  void completes_names_of_columns_and_levels_within_quotes() throws Exception {
    client.execute(
        "Table beds = Table.create(\"beds\", StringColumn.create(\"rootstock\", \"Halden"
            + " seedling\", \"Brae \\\"9\\\"\"), IntColumn.create(\"takes\", 4, 5));Table other ="
            + " Table.create(StringColumn.create(\"rose\", \"Halma\"));");
    assertThat(matches("beds.column(\"ro")).containsExactly("rootstock");
    assertThat(matches("beds.stringColumn(\"rootstock\").isEqualTo(\"Ha"))
        .containsExactly("Halden seedling");
    assertThat(matches("beds.where(\"Br")).containsExactly("Brae \\\"9\\\"");
    assertThat(matches("foo(\"ro")).contains("rootstock", "rose");
    JsonObject reply = client.at("complete_request", "beds.column(\"ro\")", 15);
    assertThat(reply.get("cursor_start").getAsInt()).isEqualTo(13);
    assertThat(reply.get("cursor_end").getAsInt()).isEqualTo(15);
  }

  @Test
  void completes_names_that_records_fits_and_verdicts_know() throws Exception {
    client.execute(
        """
        var stalls = new StringBuilder("cultivar,rootstock,grafts,takes\\n");
        for (int i = 0; i < 24; i++) {
          stalls.append(i % 2 == 0 ? "Orrin," : "Tamsin,").append(i % 3 == 0 ? "Pellin" : "Ostrey");
          stalls.append(",10,").append(4 + i % 5).append("\\n");
        }
        Path sheet = Files.writeString(Files.createTempFile("stalls", ".csv"), stalls.toString());
        GraftRecords grafts = GraftRecords.read(sheet);
        Analysis analysis = Analysis.of(grafts);
        var verdict = analysis.rootstock();\
        """);
    assertThat(matches("grafts.where(\"cult")).containsExactly("cultivar");
    assertThat(matches("grafts.where(\"cultivar\", \"")).startsWith("Orrin", "Tamsin");
    assertThat(matches("grafts.where(\"rootstock\", \"O")).startsWith("Ostrey", "Orrin");
    assertThat(matches("analysis.takeDraws(\"root")).containsExactly("rootstock");
    assertThat(matches("verdict.orElseThrow().pair(\"Pellin\", \"O")).containsExactly("Ostrey");
    assertThat(matches("analysis.fit().predict(PlannedLot.any().with(\"cultivar\", \""))
        .startsWith("Orrin", "Tamsin");
  }

  /** Patterns in switch are part of Java from 21 on; see decision 17. */
  @Test
  void switch_over_types_works_where_java_has_it_and_else_says_so() throws Exception {
    Outcome outcome =
        client.execute(
            """
            record Whip(int cuts) { }
            Object joint = new Whip(2);
            String cut = switch (joint) { case Whip w -> "whip " + w.cuts(); default -> "other"; };
            cut\
            """);
    if (Runtime.version().feature() >= 21) {
      assertThat(outcome.result()).isEqualTo("whip 2");
    } else {
      assertThat(outcome.traceback())
          .contains(
              "cell [", "line 3", "this Java is version 17; for a later one, install its JDK");
    }
  }

  @Test
  void completes_names_of_files_within_quotes() throws Exception {
    Path sheets = Files.createDirectories(folder.resolve("sheets"));
    Files.writeString(sheets.resolve("season-2024.csv"), "");
    assertThat(matches("Path.of(\"" + folder + "/she")).containsExactly(folder + "/sheets/");
    assertThat(matches("Path.of(\"" + sheets + "/")).containsExactly(sheets + "/season-2024.csv");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "AtomicInteger a; | import java.util.concurrent.atomic.AtomicInteger;",
        "HttpClient.newHttpClient() | import java.net.http.HttpClient;",
        "var f = new NumberFormat(); | import java.text.NumberFormat;",
      })
  void names_the_import_that_is_missing(String code, String hint) throws Exception {
    assertThat(client.execute(code).traceback()).contains("it may need: ").contains(hint);
  }

  @Test
  void usual_names_are_imported() throws Exception {
    assertThat(
            client
                .execute(
                    "ExecutorService pool = Executors.newFixedThreadPool(1);\n"
                        + "int n = pool.submit(() ->"
                        + " Pattern.compile(\"a+\").matcher(\"caat\").results().toList().size()).get();\n"
                        + "pool.shutdown();\n"
                        + "IntColumn.create(\"n\", n).size()")
                .result())
        .isEqualTo("1");
    assertThat(client.execute("1").printed("stderr")).doesNotContain("nothing to import");
  }

  @Test
  void an_optional_shows_what_it_holds() throws Exception {
    assertThat(client.execute("Optional.of(41)").result()).isEqualTo("41");
    assertThat(client.execute("OptionalInt.of(4)").result()).isEqualTo("4");
    assertThat(client.execute("OptionalDouble.of(0.25)").result()).isEqualTo("0.25");
    assertThat(client.execute("OptionalLong.of(9)").result()).isEqualTo("9");
    assertThat(client.execute("Optional.empty()").result()).isEqualTo("Optional.empty");
    JsonObject table =
        data(
            client
                .execute("Optional.of(Table.create(IntColumn.create(\"takes\", 4)))")
                .of("execute_result")
                .get(0));
    assertThat(table.get("text/html").getAsString()).contains("<table");
  }

  @Test
  void values_without_a_text_of_their_own_say_what_they_can_be_asked() throws Exception {
    String shown = client.execute("new java.util.concurrent.CompletableFuture<String>()").result();
    assertThat(shown).contains("CompletableFuture@");
    String ours =
        client.execute("org.taketally.notebook.kernel.wire.ConnectionFile.unused()").result();
    assertThat(ours).startsWith("connection file\n").contains("shell port");
    String codec =
        client.execute("new org.taketally.notebook.kernel.wire.MessageCodec(\"k\")").result();
    assertThat(codec).isEqualTo("MessageCodec");
  }

  @Test
  void exceptions_of_threads_name_the_cell_and_line() throws Exception {
    Outcome outcome =
        client.execute(
            """
            void fail() {
              throw new IllegalStateException("in a thread");
            }
            Thread broken = new Thread(() -> fail(), "grafting");
            broken.start();
            broken.join();\
            """);
    String text = outcome.printed("stderr").replaceAll("\u001b\\[[0-9;]*m", "");
    int count = outcome.reply().get("execution_count").getAsInt();
    assertThat(text)
        .startsWith(
            "Exception in thread \"grafting\" java.lang.IllegalStateException: in a thread\n")
        .contains("fail (cell [" + count + "], line 2)")
        .contains("lambda (cell [" + count + "], line 4)")
        .doesNotContain("REPL", "JShell");
  }

  @Test
  void tablesaws_readers_by_name_say_what_to_call() throws Exception {
    Path sheet = Files.writeString(folder.resolve("x.csv"), "takes,grafts\n4,5\n");
    Outcome outcome = client.execute("Table.read().csv(\"" + sheet + "\")");
    assertThat(outcome.traceback()).contains("Table.read().csv(Files.newBufferedReader(");
    assertThat(
            client
                .execute(
                    "Table.read().csv(Files.newBufferedReader(Path.of(\""
                        + sheet
                        + "\"))).rowCount()")
                .result())
        .isEqualTo("1");
  }

  @Test
  void memory_is_given_back_and_the_limit_told() throws Exception {
    Outcome outcome =
        client.execute(
            "List<long[]> hoard = new ArrayList<>();\nlong[] huge = new long[Integer.MAX_VALUE];");
    assertThat(outcome.traceback()).contains("OutOfMemoryError").contains("MB of memory");
    assertThat(client.execute("hoard.size()").result()).isEqualTo("0");
  }

  @Test
  void inspection_tells_overloads_apart_by_their_types() throws Exception {
    client.execute("Interval likely = new Interval(0.2, 0.4, 0.95);");
    JsonObject reply = client.at("inspect_request", "likely.contains(", 14);
    String text = data(reply).get("text/plain").getAsString();
    String[] overloads = text.split("(?m)^(?=boolean )");
    assertThat(overloads).hasSizeGreaterThanOrEqualTo(2);
    for (String overload : overloads) {
      if (overload.startsWith("boolean Interval.contains(double")) {
        assertThat(overload).contains("Whether a value lies inside");
      } else if (overload.startsWith("boolean Interval.contains(Interval")) {
        assertThat(overload).contains("Whether the other interval");
      }
    }
  }
}
