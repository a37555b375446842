package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.invented.BenchRecords;
import org.taketally.wording.language.Language;
import org.taketally.wording.season.SeasonWords;

/** Commands as typed: what is said, and the exit status. */
class CommandsTest {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root", ".."));
  private static final Path CHECKS = Path.of("src/test/resources/checks");
  private static final Path RECORDS = Path.of("src/test/resources/records");
  private static final String HEADER = "cultivar,rootstock,grafts,takes\n";
  private static final String LIKELY = SeasonWords.in(Language.ENGLISH).sure().likely();

  private static final SharedDemoWork DEMO = new SharedDemoWork();

  @TempDir private Path folder;

  private static CommandRun run(Object... arguments) {
    return CommandRun.of(arguments).said();
  }

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  @Test
  void a_list_of_what_was_published_that_is_no_text_is_told() throws IOException {
    Path sheet =
        Files.writeString(
            folder.resolve("own.csv"),
            """
            cultivar,rootstock,grafts,takes,grafter
            Orrin,Ostrey,12,10,Maud
            Orrin,Pellin,12,9,Tove
            """);
    Path out = Files.createDirectories(folder.resolve("out"));
    Files.write(out.resolve("season-published.csv"), new byte[] {'p', (byte) 0xFF, '\n'});
    CommandRun outcome = run("summary", sheet, "--out", out, "--replace").said();
    assertThat(outcome.status()).isEqualTo(ExitStatus.CANNOT_BE_COMPUTED);
    assertThat(outcome.err())
        .contains("season-published.csv: found a file that isn't text in UTF-8; move it away");
  }

  @Test
  void hickory_records_are_read_by_a_dictionary_and_answered() throws IOException {
    Path json = folder.resolve("hickory.json");
    CommandRun outcome =
        run(
            "analyse",
            "--dictionary",
            RECORDS.resolve("hickory-dictionary.json"),
            "--json",
            json,
            CHECKS.resolve("graft_hickory_bixby_1923.csv"),
            CHECKS.resolve("graft_hickory_bixby_1924.csv"));
    assertThat(outcome.status()).isEqualTo(ExitStatus.FINE);
    JsonObject result = JsonParser.parseString(Files.readString(json)).getAsJsonObject();
    assertThat(result.getAsJsonObject("rootstock").get("verdict").getAsString())
        .isIn("matters", "can't tell yet", "entangled");
    assertThat(result.getAsJsonArray("difficulty").size()).isGreaterThan(10);
    JsonObject records = result.getAsJsonObject("records");
    assertThat(records.get("read").getAsLong())
        .isEqualTo(records.get("kept").getAsLong() + records.get("setAside").getAsLong());
    assertThat(outcome.out())
        .contains("Does the rootstock matter?", "Which cultivars are hard", "from 491 grafts");
  }

  @Test
  void same_input_gives_the_same_bytes() throws IOException {
    Path sheet = ROOT.resolve("datasets/halden-bay-walnut/grafts-2023.csv");
    Path first = folder.resolve("first.json");
    Path second = folder.resolve("second.json");
    run("analyse", "--json", first, sheet);
    run("analyse", "--json", second, sheet);
    assertThat(first).hasSameBinaryContentAs(second);
  }

  @Test
  void same_records_give_the_same_bytes_where_spreads_are_integrated() throws IOException {
    Path sheet = folder.resolve("S.csv");
    try (BufferedWriter writer = Files.newBufferedWriter(sheet)) {
      BenchRecords.write(BenchRecords.Size.S, 1, writer);
    }
    Path dictionary =
        Files.writeString(
            folder.resolve("columns.json"), "{ \"columns\": { \"record\": \"graft_id\" } }");
    for (String name : List.of("first.json", "second.json")) {
      CommandRun outcome =
          run(
              "analyse",
              "--vary-by",
              "cultivar,rootstock,pairing,grafter,site,season",
              "--dictionary",
              dictionary,
              "--json",
              folder.resolve(name),
              sheet);
      assertThat(outcome.status()).as(outcome.err()).isEqualTo(ExitStatus.FINE);
    }
    assertThat(folder.resolve("first.json")).hasSameBinaryContentAs(folder.resolve("second.json"));
  }

  /** Reference: R 4.2.2, confint(glm(cbind(c(30, 12), c(10, 28)) ~ stock, binomial)). */
  @Test
  void profile_gives_ranges_by_likelihood() throws IOException {
    Path json = folder.resolve("profile.json");
    CommandRun outcome =
        run(
            "analyse",
            "--adjust-for",
            "rootstock",
            "--profile",
            "--json",
            json,
            file("two.csv", HEADER + "Orrin,A,40,30\nOrrin,B,40,12\n"));
    assertThat(outcome.status()).as(outcome.err()).isEqualTo(ExitStatus.FINE);
    assertThat(outcome.out()).contains("Ranges by profile likelihood", "rootstock B: -1.946");
    JsonObject stock =
        JsonParser.parseString(Files.readString(json))
            .getAsJsonObject()
            .getAsJsonObject("fit")
            .getAsJsonArray("profile")
            .get(1)
            .getAsJsonObject();
    assertThat(stock.get("low").getAsDouble()).isCloseTo(-2.97321212, within(1e-3));
    assertThat(stock.get("high").getAsDouble()).isCloseTo(-0.9930099, within(1e-3));
  }

  @Test
  void walnut_names_the_bad_stock() {
    List<Object> typed = new ArrayList<>(List.of("analyse", "--crop", "walnut"));
    for (int year = 2023; year <= 2025; year++) {
      typed.add(ROOT.resolve("datasets/halden-bay-walnut/grafts-%d.csv".formatted(year)));
    }
    CommandRun outcome = run(typed.toArray());
    assertThat(outcome.status()).isEqualTo(ExitStatus.FINE);
    assertThat(outcome.out()).contains("It matters: Greyshell seedling takes about");
  }

  /** Whatever was grafted on one day took or failed together; elsewhere all took. */
  @Test
  void records_too_few_for_any_estimate_still_give_a_page_of_counts() throws IOException {
    for (int failing : new int[] {3, 13}) {
      StringBuilder sheet = new StringBuilder("grafter,cultivar,rootstock,graft_date,outcome\n");
      for (int i = 1; i <= 12; i++) {
        String outcome = i % failing == 0 ? "failed" : "taken";
        sheet.append("m%d,Orrin,Pellin,2024-03-1%d,%s\n".formatted(i % 4 + i / 12, i % 3, outcome));
      }
      Path file = Files.writeString(folder.resolve("few-" + failing + ".csv"), sheet);
      Path out = folder.resolve("few-" + failing);

      CommandRun outcome = run("summary", file, "--out", out);

      assertThat(outcome.status()).as(outcome.err()).isEqualTo(ExitStatus.FINE);
      assertThat(outcome.err()).contains("nothing estimated, the page gives counts alone: ");
      assertThat(Files.readString(out.resolve("season.html")))
          .contains("12 assessed grafts", "don&#39;t point to one change")
          .doesNotContain("Clearly hard");
      assertThat(out.resolve("handout.html")).exists();
    }
  }

  @Test
  void demo_fits_on_a_screen_and_ends_with_the_path_of_the_page() {
    CommandRun outcome =
        CommandRun.of(DEMO.commands(), "demo", "--out", folder.resolve("short")).said();
    assertThat(outcome.status()).isEqualTo(ExitStatus.FINE);
    assertThat(outcome.out().lines().count()).as(outcome.out()).isLessThanOrEqualTo(20);
    assertThat(outcome.out().replaceAll("\\s+", " "))
        .contains("680 of 1,136 grafts took", "Does the rootstock matter?", "hard to get to take")
        .contains("What goes with take most", "How long does budwood keep?");
    assertThat(outcome.out().replaceAll("\\s+", " ").split(Pattern.quote(LIKELY), -1)).hasSize(2);
    assertThat(outcome.err()).contains("working out answers, advice and pages: about", "done in ");
    assertThat(outcome.out().stripTrailing())
        .endsWith(folder.resolve("short/season.html").toAbsolutePath().normalize().toString());
    assertThat(folder.resolve("short/handout.html")).exists();
    assertThat(folder.resolve("short/figure-cultivars.png")).exists();
  }

  @Test
  void demo_in_full_answers_in_words_and_ends_with_the_path_of_the_page() throws IOException {
    CommandRun outcome =
        CommandRun.of(DEMO.commands(), "demo", "--full", "--out", folder.resolve("demo")).said();
    assertThat(outcome.status()).isEqualTo(ExitStatus.FINE);
    assertThat(outcome.out())
        .contains("No practical difference: swapping between these 6 rootstocks");
    assertThat(outcome.out().stripTrailing())
        .endsWith(folder.resolve("demo/season.html").toAbsolutePath().normalize().toString());
    assertThat(Files.readString(folder.resolve("demo/season.html"))).contains("</html>");
    assertThat(Files.readString(folder.resolve("demo/handout.html")))
        .as("who sees the sheet alone knows how sure the verdict is, and from how many grafts")
        .contains("From 4,943 grafts: the widest gap", "How sure: ", "points apart");
    String flat = outcome.out().replaceAll("\\s+", " ");
    assertThat(flat)
        .contains("In short")
        .contains("How many takes are lost later? Early take 73 %, final take 61 %:")
        .contains("on Ostrey grafts start slowly: go by the final take there")
        .contains("Does the model fit these records?")
        .contains("A graft has taken when it was alive when counted");
    assertThat(flat.split(Pattern.quote(LIKELY), -1)).as("what likely means").hasSize(2);
    ReadmePictures.assertDrawnOf(DEMO.found());
    ReadmeDemo.assertPrintedBy(outcome.out());
  }

  @Test
  void stocks_left_out_of_a_named_model_are_said_to_be_so() throws IOException {
    Path sheet = file("few.csv", HEADER + "Orrin,A,40,30\nEldra,B,40,12\nOrrin,B,20,15\n");
    CommandRun outcome = run("analyse", "--vary-by", "cultivar", sheet);
    assertThat(outcome.status()).isEqualTo(ExitStatus.FINE);
    assertThat(outcome.out().replaceAll("\\s+", " "))
        .contains("The model leaves rootstock out; name it in the model to have it compared.")
        .doesNotContain("Entangled");
  }

  @Test
  void a_price_without_a_cost_and_a_cost_below_zero_are_typing_errors() throws IOException {
    Path sheet = file("few.csv", HEADER + "Orrin,A,40,30\nEldra,B,40,12\nOrrin,B,20,15\n");
    CommandRun price = run("analyse", "--price-per-tree", "12", sheet);
    assertThat(price.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(price.err()).contains("--price-per-tree needs --cost-per-graft beside it");
    CommandRun cost = run("analyse", "--cost-per-graft", "-1", sheet);
    assertThat(cost.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(cost.err()).contains("--cost-per-graft: found -1.0, expected an amount above 0");
  }

  /** 57 of 100 took: a tree costs 4 / 0.57 = 7.02, ten points less 4 / 0.47 = 8.51. */
  @Test
  void what_the_margin_costs_is_said_when_prices_are_given() throws IOException {
    Path json = folder.resolve("cost.json");
    Path sheet = file("few.csv", HEADER + "Orrin,A,40,30\nEldra,B,40,12\nOrrin,B,20,15\n");
    CommandRun outcome =
        run("analyse", "--cost-per-graft", "4", "--price-per-tree", "12", "--json", json, sheet);
    assertThat(outcome.status()).isEqualTo(ExitStatus.FINE);
    assertThat(outcome.out())
        .contains("At a take of 57 % a saleable tree costs 7.02; 10 points less make it 8.51")
        .contains("each graft made leaves 2.84 at that take and 1.64 at 10 points less");
    JsonObject cost = JsonParser.parseString(Files.readString(json)).getAsJsonObject();
    assertThat(cost.getAsJsonObject("marginCost").get("answer").getAsString())
        .startsWith("At a take of 57 % a saleable tree costs 7.02");
  }

  @Test
  void a_full_disk_is_no_fault_of_the_program_wherever_it_is_met() {
    java.io.StringWriter said = new java.io.StringWriter();
    picocli.CommandLine commands = Taketally.commandLine();
    commands.setErr(new java.io.PrintWriter(said));
    int status =
        new Failures()
            .handleExecutionException(
                new java.io.UncheckedIOException(new IOException("rows.csv: No space left")),
                commands,
                null);
    assertThat(status).isEqualTo(ExitStatus.USAGE);
    assertThat(said.toString().strip())
        .isEqualTo(
            "taketally: can't read or write a file: rows.csv: No space left; check the name, the folder, its permissions and the room left on the disk");
  }

  @Test
  void too_little_memory_is_told_in_a_sentence() {
    java.io.StringWriter said = new java.io.StringWriter();
    picocli.CommandLine commands = Taketally.commandLine();
    commands.setErr(new java.io.PrintWriter(said));
    commands.setExecutionStrategy(
        parsed -> {
          throw new OutOfMemoryError("Java heap space");
        });
    assertThat(Taketally.execute(commands, "check", "none.csv"))
        .isEqualTo(ExitStatus.CANNOT_BE_COMPUTED);
    assertThat(said.toString())
        .startsWith("taketally: these records need more memory than the ")
        .contains("java -Xmx8g");
  }

  @Test
  void every_key_of_the_result_is_explained_and_no_other() throws IOException {
    Path walnut = ROOT.resolve("datasets/halden-bay-walnut");
    Path json = folder.resolve("result.json");
    run(
        "analyse",
        walnut.resolve("grafts-2023.csv"),
        walnut.resolve("grafts-2024.csv"),
        "--assessments",
        walnut.resolve("assessments.csv"),
        "--cost-per-graft",
        "4",
        "--second-opinions",
        "--json",
        json);
    List<String> keys =
        List.copyOf(
            com.google.gson.JsonParser.parseString(Files.readString(json))
                .getAsJsonObject()
                .keySet());
    List<String> explained = new ArrayList<>();
    String page = Files.readString(ROOT.resolve("docs/commands.md"));
    String table = page.substring(page.indexOf("## The result as JSON"));
    for (String line : table.lines().filter(l -> l.startsWith("| `")).toList()) {
      java.util.regex.Pattern.compile("`(\\w+)`")
          .matcher(line.substring(0, line.indexOf('|', 1)))
          .results()
          .forEach(key -> explained.add(key.group(1)));
    }
    assertThat(keys).containsExactlyInAnyOrderElementsOf(explained);
  }

  @Test
  void analyse_stops_where_blanks_read_two_ways_and_goes_on_once_told() throws IOException {
    Path sheet =
        Files.writeString(
            folder.resolve("marks.csv"),
            "cultivar,rootstock,outcome\n"
                + "A,B,taken\n".repeat(20)
                + "A,C,taken\nA,C,\n".repeat(10)
                + "B,C,taken\nB,B,\n".repeat(10));
    CommandRun stopped = run("analyse", sheet);
    assertThat(stopped.status()).isEqualTo(ExitStatus.NEEDS_A_PERSON);
    assertThat(stopped.err()).contains("20 of 60 results blank", "\"blank_result\": \"failed\"");
    CommandRun told = run("analyse", sheet, "--blank-result", "failed");
    assertThat(told.status()).isEqualTo(ExitStatus.FINE);
    assertThat(told.err()).contains("60 grafts assessed, 40 took");
  }

  @Test
  void analyse_answers_by_counts_where_all_took_and_where_none_did() throws IOException {
    String rows = "A,B,%s\nA,C,%s\n".formatted("taken", "taken").repeat(60);
    Path sheet =
        Files.writeString(folder.resolve("all.csv"), "cultivar,rootstock,outcome\n" + rows);
    CommandRun all = run("analyse", sheet, "--json", folder.resolve("all.json")).said();
    assertThat(all.status()).isEqualTo(ExitStatus.FINE);
    assertThat(all.flat().out())
        .contains("Does the rootstock matter?", "No practical difference", "counts alone")
        .contains("moves take by at most under 1 point (likely under")
        .contains("What these records don't answer", "All of the 120 grafts took");
    assertThat(Files.readString(folder.resolve("all.json"))).contains("no practical difference");
    assertThat(all.err()).doesNotContain("nothing came of");
    assertThat(run("analyse", sheet, "--profile", "--out", folder.resolve("none")).err())
        .contains("nothing came of --out and --profile: all of the 120 grafts took");

    Path few =
        Files.writeString(
            folder.resolve("few.csv"), "cultivar,rootstock,outcome\n" + rows.substring(0, 50));
    assertThat(
            run("analyse", few, "--compare", "rootstock", "--vary-by", "cultivar,rootstock")
                .flat()
                .out())
        .contains("Can't tell yet", "All of the ");
    Path none =
        Files.writeString(
            folder.resolve("none.csv"),
            "cultivar,rootstock,outcome\n" + rows.replace("taken", "failed"));
    assertThat(run("analyse", none).flat().out())
        .contains("No practical difference", "None of the 120 grafts took");
  }

  @Test
  void repeated_counts_that_cannot_be_used_are_written_down() throws IOException {
    Path sheet =
        Files.writeString(
            folder.resolve("grafts.csv"),
            "record,cultivar,rootstock,graft_date,outcome\nG1,A,B,2024-03-01,taken\n");
    Path counts =
        Files.writeString(
            folder.resolve("counts.csv"),
            "record,assessed_date,alive\nG1,2024-04-01,1\nG9,2024-04-01,1\n");
    Path out = folder.resolve("counted");
    run("check", sheet, "--assessments", counts, "--out", out);
    assertThat(Files.readString(out.resolve("set-aside-counts.csv")))
        .contains("G9,2024-04-01,1")
        .contains("expected a record among those kept");
  }

  /** They decided how the command ended, and weren't said. */
  @Test
  void problems_of_repeated_counts_are_said_with_those_of_the_records() throws IOException {
    Path sheet =
        Files.writeString(
            folder.resolve("old.csv"),
            """
            record,cultivar,rootstock,graft_date,grafts,takes
            A1,Orrin,Pellin,1968-03-04,10,6
            """);
    Path counts =
        Files.writeString(
            folder.resolve("counts.csv"),
            """
            record,assessed_date,alive
            A1,1968-05-04,5
            A1,1968-07-04,6
            """);
    assertThat(run("check", sheet, "--assessments", counts).out())
        .contains("counts.csv line 3, column alive: found \"6 alive of A1\", expected at most 5")
        .contains("counts.csv line 2, column assessed_date: found \"1968-05-04\", expected a year")
        .contains("repeated counts: 2 rows read = 2 kept + 0 set aside");
  }

  @Test
  void a_crop_template_and_a_proposed_dictionary_are_files_that_can_be_used() throws IOException {
    CommandRun template = run("crop", "template", "--like", "apple");
    assertThat(template.status()).isEqualTo(ExitStatus.FINE);
    Path crop = Files.writeString(folder.resolve("quince.csv"), template.out());
    Path sheet =
        Files.writeString(
            folder.resolve("club.csv"), "Sorte;Unterlage;angewachsen?\nA;B;ja\nA;C;nein\n");
    CommandRun proposal = run("dictionary", "suggest", sheet);
    assertThat(proposal.status()).isEqualTo(ExitStatus.FINE);
    assertThat(proposal.err()).contains("because ", "\"Sorte\" is a common word for cultivar");
    Path dictionary = Files.writeString(folder.resolve("dictionary.json"), proposal.out());
    CommandRun checked = run("check", sheet, "--dictionary", dictionary, "--crop", crop);
    assertThat(checked.out()).contains("2 rows read = 2 kept + 0 set aside");
    assertThat(run("crop", "list").out()).contains("avocado", "persimmon");
    assertThat(run("check", sheet, "--crop", "avocdo").err()).contains("there are apple, avocado");
  }

  @Test
  void check_names_every_planted_fault_and_loses_nothing() throws IOException {
    Path messy = ROOT.resolve("datasets/halden-bay-avocado-messy");
    List<Object> typed =
        new ArrayList<>(
            List.of(
                "check",
                "--all",
                "--crop",
                "avocado",
                "--dictionary",
                messy.resolve("dictionary.json"),
                "--out",
                folder.resolve("out")));
    for (int year = 2022; year <= 2025; year++) {
      typed.add(messy.resolve("sheet-%d.csv".formatted(year)));
    }
    CommandRun outcome = run(typed.toArray());
    assertThat(outcome.status()).isEqualTo(ExitStatus.NEEDS_A_PERSON);
    List<String> planted = Files.readAllLines(messy.resolve("planted-faults.csv"));
    assertThat(planted.size()).isGreaterThan(30);
    for (String fault : planted.subList(1, planted.size())) {
      String[] fields = fault.split(",", 4);
      String place =
          fields[1].isEmpty() || fields[1].equals("0")
              ? fields[0]
              : fields[0]
                  + " line "
                  + fields[1]
                  + (fields[2].isEmpty() ? "" : ", column " + fields[2]);
      assertThat(outcome.out()).as(fault).contains(place);
    }
    String counts =
        outcome.out().lines().filter(l -> l.contains("rows read =")).findFirst().orElseThrow();
    long[] numbers =
        java.util.regex.Pattern.compile("\\d[\\d,]*(?= )")
            .matcher(counts)
            .results()
            .mapToLong(m -> Long.parseLong(m.group().replace(",", "")))
            .toArray();
    assertThat(numbers[0]).isEqualTo(numbers[1] + numbers[2]);
    assertThat(Files.readString(folder.resolve("out/set-aside.csv"))).contains("60 %");
  }

  @Test
  void binary_garbage_is_refused_in_one_sentence() throws IOException {
    byte[] bytes = new byte[4000];
    new java.util.Random(3).nextBytes(bytes);
    Path garbage = Files.write(folder.resolve("garbage.csv"), bytes);
    for (String command : List.of("check", "analyse", "summary")) {
      CommandRun outcome = run(command, garbage);
      assertThat(outcome.status()).as(command).isEqualTo(ExitStatus.NEEDS_A_PERSON);
      assertThat(outcome.err()).contains("garbage.csv").contains("expected");
    }
  }

  @Test
  void an_empty_file_and_a_missing_column_are_refused() throws IOException {
    Path empty = file("empty.csv", "");
    assertThat(run("analyse", empty).status()).isEqualTo(ExitStatus.NEEDS_A_PERSON);
    CommandRun missing = run("analyse", file("short.csv", "cultivar,grafts,takes\nOrrin,10,8\n"));
    assertThat(missing.status()).isEqualTo(ExitStatus.NEEDS_A_PERSON);
    assertThat(missing.err()).contains("rootstock");
  }

  @Test
  void a_header_without_rows_has_nothing_to_compute() throws IOException {
    CommandRun outcome = run("analyse", file("header.csv", HEADER));
    assertThat(outcome.status()).isIn(ExitStatus.NEEDS_A_PERSON, ExitStatus.CANNOT_BE_COMPUTED);
    assertThat(outcome.err()).isNotBlank();
  }

  @Test
  void one_cultivar_only_still_answers_for_rootstocks() throws IOException {
    CommandRun outcome =
        run("analyse", file("one.csv", HEADER + "Orrin,A,40,30\nOrrin,B,40,12\nOrrin,A,20,15\n"));
    assertThat(outcome.status()).isEqualTo(ExitStatus.FINE);
    assertThat(outcome.out()).contains("hold only one cultivar (Orrin)").contains("It matters");
  }

  @Test
  void all_taken_on_one_stock_cannot_be_computed() throws IOException {
    CommandRun outcome =
        run("analyse", file("all.csv", HEADER + "Orrin,B,40,40\nEldra,B,40,40\nOrrin,B,20,20\n"));
    assertThat(outcome.status()).isEqualTo(ExitStatus.CANNOT_BE_COMPUTED);
    assertThat(outcome.err()).contains("took");
  }

  @Test
  void a_file_that_is_not_there_is_a_typing_error() {
    CommandRun outcome = run("check", folder.resolve("nowhere.csv"));
    assertThat(outcome.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(outcome.err()).contains("no file").contains("nowhere.csv");
  }

  @Test
  void an_unknown_column_is_named_with_those_there_are() throws IOException {
    CommandRun outcome =
        run(
            "analyse",
            "--adjust-for",
            "colour",
            file("few.csv", HEADER + "Orrin,A,40,30\nEldra,B,40,12\nOrrin,B,20,15\n"));
    assertThat(outcome.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(outcome.err()).contains("colour").contains("rootstock");
  }

  @Test
  void margin_is_in_points() throws IOException {
    CommandRun outcome = run("analyse", "--margin", "ten", file("x.csv", HEADER));
    assertThat(outcome.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(outcome.err()).contains("expected points between 0 and 100");
  }
}
