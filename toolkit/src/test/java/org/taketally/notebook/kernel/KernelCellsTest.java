package org.taketally.notebook.kernel;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.notebook.kernel.KernelClient.Outcome;
import org.taketally.notebook.kernel.engine.EngineOptions;
import org.taketally.notebook.kernel.wire.ConnectionFile;
import org.taketally.notebook.kernel.wire.Message;

/** What cells can do, seen over the wire: output, input, interrupts, displays, commands. */
@Timeout(120)
class KernelCellsTest {

  private static Kernel kernel;
  private static KernelClient client;

  @TempDir private static Path folder;

  @BeforeAll
  static void start() throws Exception {
    ConnectionFile connection = ConnectionFile.unused();
    kernel =
        Kernel.start(connection, new KernelSetup("Test", "1", EngineOptions.usual(), line -> {}));
    client = new KernelClient(connection).awaitReady();
  }

  @AfterAll
  static void stop() {
    client.close();
    kernel.close();
  }

  private static void interruptAfter(int milliseconds) throws Exception {
    Thread.sleep(milliseconds);
    Message interrupt = client.sendControl("interrupt_request", new JsonObject());
    assertThat(client.controlReply(interrupt).get("status").getAsString()).isEqualTo("ok");
  }

  private static Outcome interrupted(String code) throws Exception {
    Message cell = client.send("execute_request", KernelClient.code(code));
    interruptAfter(400);
    return new Outcome(client.reply(cell), client.published(cell));
  }

  private static List<Thread> busyCellThreads() {
    return Thread.getAllStackTraces().keySet().stream()
        .filter(
            thread -> thread.getName().equals("cell") && thread.getState() == Thread.State.RUNNABLE)
        .toList();
  }

  @Test
  void prints_to_both_streams_in_utf8() throws Exception {
    Outcome outcome =
        client.execute("System.out.println(\"Pfröpfling 🌳\"); System.err.print(\"böse\");");
    assertThat(outcome.printed("stdout")).isEqualTo("Pfröpfling 🌳\n");
    assertThat(outcome.printed("stderr")).isEqualTo("böse");
  }

  @Test
  void bytes_of_a_character_may_come_apart() throws Exception {
    Outcome outcome =
        client.execute(
            "for (byte b : \"🌳é\".getBytes(\"UTF-8\")) { System.out.write(b); System.out.flush();"
                + " }");
    assertThat(outcome.printed("stdout")).isEqualTo("🌳é");
  }

  @Test
  void a_hundred_thousand_lines_all_arrive_in_order() throws Exception {
    Outcome outcome =
        client.execute("for (int i = 0; i < 100_000; i++) System.out.println(\"line \" + i);");
    String expected =
        IntStream.range(0, 100_000).mapToObj(i -> "line " + i + "\n").collect(Collectors.joining());
    assertThat(outcome.printed("stdout").equals(expected)).as("all lines, in order").isTrue();
    assertThat(outcome.of("stream").size()).as("messages").isLessThan(1000);
  }

  @Test
  void threads_print_after_their_cell_has_ended() throws Exception {
    client.execute(
        "Thread later = new Thread(() -> { try { Thread.sleep(300); } catch (InterruptedException"
            + " e) {} System.out.println(\"from the background\"); });\n"
            + "later.start();");
    Message late = client.awaitPublished(message -> message.type().equals("stream"));
    assertThat(late.content().get("text").getAsString()).isEqualTo("from the background\n");
  }

  @Test
  void uncaught_exceptions_of_threads_are_shown() throws Exception {
    Outcome outcome =
        client.execute(
            "Thread broken = new Thread(() -> { throw new IllegalStateException(\"in a thread\");"
                + " });\n"
                + "broken.start();\n"
                + "broken.join();");
    assertThat(outcome.printed("stderr")).contains("java.lang.IllegalStateException: in a thread");
  }

  @Test
  void an_endless_loop_is_stopped_and_variables_are_kept() throws Exception {
    client.execute("int kept = 41;");
    Outcome outcome = interrupted("long turns = 0;\nwhile (true) {\n  turns++;\n}");
    assertThat(outcome.reply().get("ename").getAsString()).isEqualTo("Interrupted");
    assertThat(outcome.traceback()).contains("the cell was stopped").contains(", line 3");
    assertThat(busyCellThreads()).isEmpty();
    assertThat(client.execute("turns > 0 ? kept + 1 : -1").result()).isEqualTo("42");
  }

  @Test
  void waiting_is_stopped_politely() throws Exception {
    Outcome outcome =
        interrupted(
            "try {\n  Thread.sleep(60_000);\n} finally {\n  System.out.println(\"tidied up\");\n}");
    assertThat(outcome.reply().get("ename").getAsString()).isEqualTo("Interrupted");
    assertThat(outcome.printed("stdout")).isEqualTo("tidied up\n");
  }

  @Test
  void an_interrupt_that_code_swallows_still_ends_the_cell() throws Exception {
    Outcome outcome =
        interrupted(
            "try { Thread.sleep(60_000); } catch (InterruptedException e) { }\n"
                + "System.out.println(\"not reached\");");
    assertThat(outcome.reply().get("ename").getAsString()).isEqualTo("Interrupted");
    assertThat(outcome.printed("stdout")).isEmpty();
  }

  @Test
  void an_interrupt_of_nothing_does_nothing() throws Exception {
    interruptAfter(0);
    assertThat(client.execute("1 + 1").result()).isEqualTo("2");
  }

  @Test
  void exit_gives_a_readable_error_and_the_kernel_lives() throws Exception {
    Outcome outcome = client.execute("System.exit(0)");
    assertThat(outcome.reply().get("ename").getAsString()).endsWith("ExitRefused");
    assertThat(outcome.reply().get("evalue").getAsString())
        .isEqualTo(
            "System.exit(0) would end the kernel and lose every variable, so it was not done. To"
                + " end the kernel, restart it or shut it down from the menu.");
    assertThat(outcome.traceback()).contains("  at cell [");
    assertThat(client.execute("\"alive\"").result()).isEqualTo("alive");
  }

  @Test
  void cells_ask_and_get_an_answer() throws Exception {
    Message cell =
        client.send(
            "execute_request",
            KernelClient.code(
                "String name = ask(\"Whose grafts? \");\n"
                    + "name + \"/\" + new Scanner(System.in).nextLine()"));
    for (String answer : List.of("Mira", "Jon")) {
      Message question = client.stdin.receive(30_000).orElseThrow();
      assertThat(question.type()).isEqualTo("input_request");
      assertThat(question.content().get("prompt").getAsString())
          .isEqualTo(answer.equals("Mira") ? "Whose grafts? " : "");
      assertThat(question.content().get("password").getAsBoolean()).isFalse();
      JsonObject value = new JsonObject();
      value.addProperty("value", answer);
      client.stdin.send(Message.of("input_reply", List.of(), question.header(), value));
    }
    assertThat(client.reply(cell).get("status").getAsString()).isEqualTo("ok");
    assertThat(new Outcome(new JsonObject(), client.published(cell)).result())
        .isEqualTo("Mira/Jon");
  }

  @Test
  void asking_fails_where_nobody_can_be_asked() throws Exception {
    JsonObject content = KernelClient.code("ask(\"Anyone? \")");
    content.addProperty("allow_stdin", false);
    Outcome outcome = client.execute(content);
    assertThat(outcome.reply().get("ename").getAsString()).isEqualTo("java.io.IOException");
    assertThat(outcome.reply().get("evalue").getAsString())
        .isEqualTo("this frontend does not take input");
  }

  @Test
  void a_question_can_be_interrupted() throws Exception {
    Outcome outcome = interrupted("ask(\"Still there? \")");
    assertThat(outcome.reply().get("ename").getAsString()).isEqualTo("Interrupted");
    client.stdin.receive(5_000);
    assertThat(client.execute("2 + 2").result()).isEqualTo("4");
  }

  @Test
  void values_are_displayed_updated_and_cleared() throws Exception {
    Outcome outcome =
        client.execute(
            "String id = display(html(\"<b>1 &lt; 2</b>\"));\nupdate(id, \"two\");\nclear();");
    JsonObject shown = outcome.of("display_data").get(0);
    assertThat(shown.getAsJsonObject("data").get("text/html").getAsString())
        .isEqualTo("<b>1 &lt; 2</b>");
    assertThat(shown.getAsJsonObject("data").has("text/plain")).isTrue();
    JsonObject update = outcome.of("update_display_data").get(0);
    assertThat(update.getAsJsonObject("transient")).isEqualTo(shown.getAsJsonObject("transient"));
    assertThat(update.getAsJsonObject("data").get("text/plain").getAsString()).isEqualTo("two");
    assertThat(outcome.of("clear_output").get(0).get("wait").getAsBoolean()).isTrue();
  }

  @Test
  void pictures_are_shown_as_such() throws Exception {
    Outcome outcome =
        client.execute(
            "new java.awt.image.BufferedImage(2, 2, java.awt.image.BufferedImage.TYPE_INT_RGB)");
    JsonObject data = outcome.of("execute_result").get(0).getAsJsonObject("data");
    assertThat(data.get("image/png").getAsString()).startsWith("iVBOR");
  }

  @Test
  void classes_that_need_each_other_may_stand_in_one_cell() throws Exception {
    assertThat(
            client
                .execute(
                    """
                    class Stock { Scion scion; }
                    class Scion { Stock stock = new Stock(); }
                    new Scion().stock.scion == null\
                    """)
                .result())
        .isEqualTo("true");
  }

  @Test
  void names_declared_later_are_awaited() throws Exception {
    Outcome early = client.execute("int doubled() { return undeclared() * 2; }");
    assertThat(early.status()).isEqualTo("ok");
    assertThat(early.printed("stderr"))
        .isEqualTo("method doubled can't be used until method undeclared() is declared\n");
    assertThat(client.execute("doubled()").reply().get("evalue").getAsString())
        .isEqualTo("method doubled can't be used until method undeclared() is declared");
    client.execute("int undeclared() { return 21; }");
    assertThat(client.execute("doubled()").result()).isEqualTo("42");
  }

  @Test
  void a_variable_emptied_by_a_new_class_is_told() throws Exception {
    client.execute("class Lot { int size = 1; }\nLot lot = new Lot();");
    Outcome outcome = client.execute("class Lot { int size = 2; }");
    assertThat(outcome.printed("stderr"))
        .isEqualTo("variable lot was emptied because Lot changed; run its cell again\n");
  }

  @Test
  void data_of_a_variable_declared_again_is_let_go() throws Exception {
    client.execute(
        "var heavy = new byte[64];\nvar watched = new java.lang.ref.WeakReference<Object>(heavy);");
    client.execute("var heavy = new byte[64];");
    client.execute(
        "for (int i = 0; i < 50 && watched.get() != null; i++) { System.gc(); Thread.sleep(20); }");
    assertThat(client.execute("watched.get() == null").result()).isEqualTo("true");
  }

  @Test
  void earlier_code_keeps_what_it_captured() throws Exception {
    client.execute(
        "int[] captured = {1};\nRunnable shows = () -> System.out.println(captured[0]);");
    client.execute("int[] captured = {2};");
    client.execute("for (int i = 0; i < 5; i++) { System.gc(); Thread.sleep(20); }");
    assertThat(client.execute("shows.run()").printed("stdout")).isIn("1\n", "2\n");
  }

  @Test
  void cells_see_what_is_not_public_in_other_cells() throws Exception {
    client.execute(
        """
        class Bench { int seats = 4; int free() { return seats; } Bench() { } }
        enum Knife { SHARP, BLUNT }
        interface Cut { int depth(); }
        record Bud(int number) { }\
        """);
    assertThat(
            client
                .execute(
                    "new Bench().seats + new Bench().free() + Knife.values().length + new"
                        + " Bud(3).number()")
                .result())
        .isEqualTo("13");
    assertThat(
            client
                .execute(
                    "Cut cut = () -> 7;\n"
                        + "switch (Knife.SHARP) { case SHARP: cut.depth(); default: }")
                .status())
        .isEqualTo("ok");
    assertThat(
            client
                .execute(
                    """
                    class Tall extends Bench { int free() { return super.free() * 2; } }
                    Bench bench = new Tall();
                    bench.free()\
                    """)
                .result())
        .isEqualTo("8");
  }

  @Test
  void jars_and_folders_can_be_added() throws Exception {
    Path source = folder.resolve("Budwood.java");
    Files.writeString(
        source,
        "package halden; public class Budwood { public static int sticks() { return 5; } }");
    ToolProvider.getSystemJavaCompiler()
        .run(null, null, null, "-d", folder.resolve("classes").toString(), source.toString());
    assertThat(
            client
                .execute(
                    "%jars " + folder.resolve("classes") + "\nimport halden.*;\nBudwood.sticks()")
                .result())
        .isEqualTo("5");
    assertThat(client.execute("%classpath").printed("stdout"))
        .contains(folder.resolve("classes").toString());
    Outcome missing = client.execute("%jars " + folder.resolve("none.jar"));
    assertThat(missing.reply().get("evalue").getAsString())
        .contains("%jars: found nothing at " + folder.resolve("none.jar"));
  }

  /** A repository of two libraries, of which one needs the other, without any network. */
  @Test
  void libraries_can_be_added_by_maven_coordinates_with_what_they_need() throws Exception {
    Path repository = folder.resolve("repository");
    library(
        repository,
        "sticks",
        "package halden; public class Sticks { public int n() { return 5; } }",
        "");
    library(
        repository,
        "order",
        "package halden; public class Order { public int buds() { return 2 * new Sticks().n(); } }",
        "<dependencies><dependency><groupId>halden</groupId><artifactId>sticks</artifactId>"
            + "<version>1.0</version></dependency></dependencies>");
    String kept = "System.setProperty(\"maven.repo.local\", \"" + folder.resolve("kept") + "\");";
    client.execute(kept);
    Outcome added = client.execute("%maven halden:order:1.0 from " + repository);
    assertThat(added.printed("stdout")).contains("added 2 jars");
    assertThat(client.execute("new halden.Order().buds()").result()).isEqualTo("10");
    library(
        repository,
        "vans",
        "package halden; public class Vans { }",
        "<dependencies><dependency><groupId>halden</groupId><artifactId>${needed}</artifactId>"
            + "<version>1.0</version></dependency></dependencies>"
            + "<profiles><profile><id>java</id><activation><property><name>java.version</name>"
            + "</property></activation><properties><needed>order</needed></properties></profile>"
            + "</profiles>");
    assertThat(client.execute("%maven halden:vans:1.0 from " + repository).printed("stdout"))
        .as("needs a system property to say what it needs")
        .contains("added 3 jars");
    assertThat(
            client
                .execute("%maven halden:vans:1.0 -halden:sticks from " + repository)
                .printed("stdout"))
        .contains("added 2 jars");
    for (String version : List.of("[1.0,2.0)", "LATEST")) {
      Outcome range = client.execute("%maven halden:order:" + version + " from " + repository);
      assertThat(range.reply().get("evalue").getAsString()).contains("expected one version");
    }
    Outcome wrong = client.execute("%maven halden from " + repository);
    assertThat(wrong.reply().get("evalue").getAsString())
        .contains("%maven: found \"halden\", expected group:artifact:version");
    Outcome missing = client.execute("%maven halden:none:1.0 from " + repository);
    assertThat(missing.reply().get("evalue").getAsString()).contains("%maven: ", "halden:none");
    Outcome nowhere = client.execute("%maven halden:order:1.0 from " + folder.resolve("nowhere"));
    assertThat(nowhere.reply().get("evalue").getAsString()).contains("%maven: found no folder");
  }

  private void library(Path repository, String name, String source, String needs) throws Exception {
    Path classes = folder.resolve("classes-of-libraries");
    Path file =
        folder.resolve(
            name.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + name.substring(1) + ".java");
    Files.writeString(file, source);
    ToolProvider.getSystemJavaCompiler()
        .run(
            null, null, null, "-cp", classes.toString(), "-d", classes.toString(), file.toString());
    Path home = Files.createDirectories(repository.resolve("halden/" + name + "/1.0"));
    String type = file.getFileName().toString().replace(".java", ".class");
    try (java.util.jar.JarOutputStream jar =
        new java.util.jar.JarOutputStream(Files.newOutputStream(home.resolve(name + "-1.0.jar")))) {
      jar.putNextEntry(new java.util.zip.ZipEntry("halden/" + type));
      jar.write(Files.readAllBytes(classes.resolve("halden/" + type)));
    }
    Files.writeString(
        home.resolve(name + "-1.0.pom"),
        "<project><modelVersion>4.0.0</modelVersion><groupId>halden</groupId><artifactId>"
            + name
            + "</artifactId><version>1.0</version>"
            + needs
            + "</project>");
  }

  @Test
  void time_is_told_of_code_on_the_same_line_too() throws Exception {
    Outcome outcome = client.execute("%time int doubled = 2 * 21;\ndoubled");
    assertThat(outcome.result()).isEqualTo("42");
    assertThat(outcome.printed("stdout")).contains("this cell took ");
  }

  @Test
  void records_may_check_what_they_are_given() throws Exception {
    Outcome outcome =
        client.execute(
            "record Batch(int grafts, int takes) {\n"
                + "  Batch {\n"
                + "    if (takes > grafts) throw new IllegalArgumentException(\"more takes than"
                + " grafts\");\n"
                + "  }\n"
                + "  Batch(int grafts) { this(grafts, 0); }\n"
                + "}\n"
                + "new Batch(9).takes()");
    assertThat(outcome.result()).isEqualTo("0");
    Outcome refused = client.execute("new Batch(9, 10)");
    assertThat(refused.reply().get("evalue").getAsString()).isEqualTo("more takes than grafts");
    Outcome wrong = client.execute("record Row(int n) {\n  Row {\n    int bad = \"text\";\n  }\n}");
    assertThat(wrong.traceback())
        .contains("line 3\n        int bad = \"text\";\n                  ^^^^^^\n");
  }

  @Test
  void a_value_of_a_class_of_a_cell_is_shown_by_the_name_it_has_there() throws Exception {
    assertThat(client.execute("class Graft { }\nnew Graft()").result()).matches("Graft@[0-9a-f]+");
    assertThat(client.execute("List.of(new Graft())").result()).matches("\\[Graft@[0-9a-f]+]");
  }

  @Test
  void a_cell_can_have_a_time_limit() throws Exception {
    Outcome outcome = client.execute("%limit 0.3\nwhile (true) { }");
    assertThat(outcome.reply().get("ename").getAsString()).isEqualTo("Interrupted");
    assertThat(outcome.reply().get("evalue").getAsString())
        .isEqualTo("the cell took longer than its limit of 0.3 s");
    assertThat(client.execute("%limit soon\n1").reply().get("evalue").getAsString())
        .endsWith("%limit: found \"soon\", expected a number of seconds above 0");
  }

  @Test
  void commands_stand_only_where_a_statement_begins() throws Exception {
    assertThat(client.execute("int rest = 17\n% 5;\nrest").result()).isEqualTo("2");
    assertThat(client.execute("String text = \"\"\"\n%jars nothing\n\"\"\";\ntext").result())
        .isEqualTo("%jars nothing\n");
    assertThat(client.execute("%nosuch").reply().get("evalue").getAsString())
        .endsWith("no command %nosuch; %help lists them");
    assertThat(client.execute("%help").printed("stdout")).contains("%jars", "%limit");
  }

  @Test
  void a_name_and_a_question_mark_open_a_page() throws Exception {
    JsonObject payload =
        client
            .execute("Bundle?".replace("Bundle", "String"))
            .reply()
            .getAsJsonArray("payload")
            .get(0)
            .getAsJsonObject();
    assertThat(payload.get("source").getAsString()).isEqualTo("page");
    assertThat(payload.getAsJsonObject("data").get("text/plain").getAsString()).contains("String");
  }
}
