package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** No command writes over what it reads, or over anything of a person's. */
class NothingOverwrittenTest {

  private static final List<String> STOCKS = List.of("Halden", "Local", "Ostrey");

  @TempDir private Path folder;
  private Path season;

  private static CommandRun run(Object... arguments) {
    return CommandRun.of(arguments);
  }

  /** Enough rows and members for a page. */
  @BeforeEach
  void writeRecords() throws IOException {
    StringBuilder text = new StringBuilder("cultivar,rootstock,grafter,season,grafts,takes,note\n");
    for (int i = 0; i < 84; i++) {
      text.append(
          "%s,%s,G%d,%d,10,%d,\n"
              .formatted(
                  i % 2 == 0 ? "Orrin" : "Brell",
                  STOCKS.get(i % 3),
                  i % 7,
                  2023 + i % 2,
                  3 + i * 7 % 7));
    }
    season = Files.writeString(folder.resolve("season.csv"), text);
  }

  private void assertKept(CommandRun outcome, Path file, String before) throws IOException {
    assertThat(Files.readString(file)).isEqualTo(before);
    assertThat(outcome.status()).as(outcome.err()).isEqualTo(ExitStatus.USAGE);
    assertThat(outcome.err())
        .contains(file.getFileName().toString(), "is one of the files being read");
  }

  @Test
  void rows_set_aside_again_do_not_replace_the_repaired_file() throws IOException {
    Path sheet =
        Files.writeString(
            folder.resolve("sheet.csv"),
            "cultivar,rootstock,grafts,takes\nOrrin,Halden,10,8\nBrell,Halden,10,12\n");
    Path out = folder.resolve("out");
    run("check", sheet, "--out", out);
    Path aside = out.resolve("set-aside.csv");
    String repaired = Files.readString(aside).replace("10,12", "10,9");
    Files.writeString(aside, repaired);
    CommandRun again = run("check", sheet, aside, "--out", out);
    assertThat(aside).hasContent(repaired);
    assertThat(again.out()).contains("set-aside-2.csv");
    CommandRun alone = run("check", sheet, "--out", out);
    assertThat(aside).as("repaired, but not named").hasContent(repaired);
    assertThat(alone.out()).contains("set-aside-2.csv");
  }

  @Test
  void a_summary_spares_the_season_it_is_made_from() throws IOException {
    String before = Files.readString(season);
    for (String more : List.of("--strict", "--replace")) {
      assertKept(run("summary", season, "--out", folder, more), season, before);
    }
    assertThat(folder.resolve("season.html")).doesNotExist();
  }

  @Test
  void tables_spare_records_named_like_them() throws IOException {
    Path out = folder.resolve("out");
    CommandRun first = run("analyse", season, "--out", out);
    assertThat(first.status()).as(first.err()).isEqualTo(ExitStatus.FINE);
    String before = Files.readString(season);
    List<Path> tables;
    try (Stream<Path> files = Files.list(out)) {
      tables = files.filter(file -> file.toString().endsWith(".csv")).toList();
    }
    assertThat(tables).isNotEmpty();
    Path table = tables.get(0);
    Path records = folder.resolve(table.getFileName());
    Files.copy(season, records);
    assertKept(run("analyse", records, "--out", folder), records, before);
    assertThat(folder.resolve("answers.html")).doesNotExist();
  }

  @Test
  void the_result_spares_the_records_the_dictionary_and_the_crop() throws IOException {
    Path dictionary = Files.writeString(folder.resolve("columns.json"), "{ \"columns\": {} }");
    for (Path read : List.of(season, dictionary)) {
      String before = Files.readString(read);
      assertKept(
          run("analyse", season, "--dictionary", dictionary, "--json", read, "--replace"),
          read,
          before);
    }
  }

  @Test
  void the_result_spares_a_file_of_a_person() throws IOException {
    Path notes = Files.writeString(folder.resolve("notes.json"), "mine");
    CommandRun refused = run("analyse", season, "--json", notes);
    assertThat(refused.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(refused.err()).contains("notes.json", "--replace");
    assertThat(notes).hasContent("mine");
    assertThat(run("analyse", season, "--json", notes, "--replace").status())
        .isEqualTo(ExitStatus.FINE);
    assertThat(run("analyse", season, "--json", notes).status())
        .as("its own result is written anew without asking")
        .isEqualTo(ExitStatus.FINE);
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void a_link_among_the_outputs_does_not_lead_to_the_records() throws IOException {
    String before = Files.readString(season);
    Path out = Files.createDirectory(folder.resolve("out"));
    Files.createSymbolicLink(out.resolve("season.csv"), season);
    for (String more : List.of("--strict", "--replace")) {
      CommandRun outcome = run("summary", season, "--out", out, more);
      assertThat(outcome.status()).isEqualTo(ExitStatus.USAGE);
      assertThat(season).hasContent(before);
    }
    Files.createSymbolicLink(folder.resolve("same"), folder);
    assertKept(run("summary", season, "--out", folder.resolve("same")), season, before);
  }

  @Test
  void a_page_a_person_worked_on_is_spared() throws IOException {
    Path out = folder.resolve("out");
    assertThat(run("summary", season, "--out", out).status()).isEqualTo(ExitStatus.FINE);
    assertThat(run("summary", season, "--out", out).status()).isEqualTo(ExitStatus.FINE);
    Files.writeString(out.resolve("season.md"), "edited for the newsletter");
    CommandRun refused = run("summary", season, "--out", out);
    assertThat(refused.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(refused.err()).contains("season.md stands there already and was changed since");
    assertThat(out.resolve("season.md")).hasContent("edited for the newsletter");
  }

  @Test
  void a_notebook_is_not_replaced_by_its_copy() throws IOException {
    Path notebook =
        Files.writeString(
            folder.resolve("n.ipynb"),
            "{\"cells\": [], \"metadata\": {}, \"nbformat\": 4, \"nbformat_minor\": 5}");
    String before = Files.readString(notebook);
    assertKept(run("notebook", "run", notebook, "--out", folder, "--replace"), notebook, before);
  }

  @Test
  void the_demo_spares_a_file_in_its_place() throws IOException {
    Path records = Files.createDirectories(folder.resolve("demo/records"));
    Path mine = Files.writeString(records.resolve("grafts-2024.csv"), "mine");
    CommandRun outcome = run("demo", "--out", folder.resolve("demo"));
    assertThat(outcome.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(mine).hasContent("mine");
  }

  /**
   * Formulas in names reach no table as formulas, and rows set aside are read as they were typed.
   */
  @Test
  void names_that_look_like_formulas_stay_names() throws IOException {
    Path sheet = folder.resolve("formulas.csv");
    Files.writeString(
        sheet,
        Files.readString(season)
                .replace("Orrin", "=HYPERLINK(\"\"http://x\"\")".replace("\"\"", ""))
                .replace("Halden", "+cmd")
                .replace("G1", "@SUM(1)")
            + "=late,-x,G1,2023,5,9,=1+1\n");
    Path out = folder.resolve("out");
    CommandRun outcome = run("analyse", sheet, "--out", out);
    assertThat(outcome.status()).as(outcome.err()).isEqualTo(ExitStatus.FINE);
    run("check", sheet, "--out", out);
    try (Stream<Path> files = Files.list(out)) {
      for (Path table : files.filter(file -> file.toString().endsWith(".csv")).toList()) {
        assertThat(Files.readString(table))
            .as(table.toString())
            .doesNotContainPattern("(?m)(^|,)\"?[=@]")
            .doesNotContainPattern("(?m)(^|,)\"?[+-][^0-9]");
      }
    }
    Path aside = out.resolve("set-aside.csv");
    assertThat(Files.readString(aside)).contains("'=late,'-x,G1,2023,5,9,'=1+1");
    CommandRun again = run("check", aside, "--out", folder.resolve("again"));
    assertThat(again.out()).contains("found \"9\"");
    assertThat(folder.resolve("again/set-aside.csv"))
        .content()
        .contains("'=late,'-x,G1,2023,5,9,'=1+1");
  }

  @Test
  void names_cannot_steer_the_terminal() throws IOException {
    Path sheet =
        Files.writeString(
            folder.resolve("steering.csv"),
            "cultivar,rootstock,grafts,takes\n\u001b[2JOrrin\u202E,Halden,10,1\u001b]2;12\n");
    StringWriter out = new StringWriter();
    CommandLine commands = Taketally.commandLine();
    commands.setOut(org.taketally.files.Terminal.on(out));
    commands.execute("check", sheet.toString(), "--out", folder.resolve("out").toString());
    assertThat(out.toString()).doesNotContain("\u001b").contains("1\\u001B]2;12");
    assertThat(Taketally.commandLine().getOut()).isInstanceOf(org.taketally.files.Terminal.class);
    assertThat(Taketally.commandLine().getErr()).isInstanceOf(org.taketally.files.Terminal.class);
  }
}
