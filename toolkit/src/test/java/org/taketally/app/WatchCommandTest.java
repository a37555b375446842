package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Watching a season as typed: the demo's season of 2023 against that of 2022. */
class WatchCommandTest {

  private static final Path DATA =
      Path.of(System.getProperty("taketally.root", ".."), "datasets", "halden-bay-avocado");

  @TempDir private Path folder;

  private static CommandRun run(Object... arguments) {
    return CommandRun.of(arguments).said().flat();
  }

  /** The season with a column of fridge batches, one of them bad if {@code planted}. */
  private Path season(boolean planted) throws IOException {
    List<String> lines = Files.readAllLines(DATA.resolve("grafts-2023.csv"));
    List<String> headings = List.of(lines.get(0).split(",", -1));
    int day = headings.indexOf("graft_date");
    int takes = headings.indexOf("takes");
    int outcome = headings.indexOf("outcome");
    List<String> days =
        lines.stream().skip(1).map(line -> line.split(",", -1)[day]).distinct().sorted().toList();
    String text =
        IntStream.range(0, lines.size())
            .mapToObj(
                i -> {
                  String[] cells = lines.get(i).split(",", -1);
                  if (i == 0) {
                    return lines.get(0) + ",fridge_batch";
                  }
                  int batch = days.indexOf(cells[day]) / 3;
                  if (planted && batch == 3 && takes >= 0 && cells[takes].matches("\\d+")) {
                    cells[takes] = String.valueOf(Integer.parseInt(cells[takes]) / 5);
                  }
                  if (planted && batch == 3 && outcome >= 0 && i % 5 > 0) {
                    cells[outcome] = cells[outcome].replace("taken", "failed");
                  }
                  return String.join(",", cells) + ",F" + batch;
                })
            .collect(Collectors.joining("\n"));
    return Files.writeString(folder.resolve("season.csv"), text + "\n");
  }

  @Test
  void a_bad_batch_is_alarmed_and_named() throws IOException {
    Path json = folder.resolve("watch.json");
    CommandRun outcome =
        run("watch", season(true), "--json", json, "--against", DATA.resolve("grafts-2022.csv"));
    assertThat(outcome.status()).as(outcome.err()).isEqualTo(ExitStatus.NEEDS_A_PERSON);
    assertThat(outcome.out()).contains("ALARM on 2023-", "prompts to look, not verdicts");
    JsonObject first =
        JsonParser.parseString(Files.readString(json))
            .getAsJsonObject()
            .getAsJsonArray("alarms")
            .get(0)
            .getAsJsonObject();
    JsonObject cause = first.getAsJsonArray("causes").get(0).getAsJsonObject();
    assertThat(cause.get("level").getAsString()).isEqualTo("F3");
  }

  /** The demo's hot week is 19 to 25 March 2023 at Ridge Farm (datasets, truth.csv). */
  @Test
  void the_hot_week_of_the_demo_is_alarmed_and_named() throws IOException {
    CommandRun outcome =
        run(
            "watch",
            season(false),
            "--false-alarms",
            "0.5",
            "--against",
            DATA.resolve("grafts-2022.csv"));
    assertThat(outcome.status()).as(outcome.out()).isEqualTo(ExitStatus.NEEDS_A_PERSON);
    assertThat(outcome.out()).contains("1. Grafting day Ridge Farm 2023-03-24");
  }

  @Test
  void the_season_without_that_week_gives_no_alarm() throws IOException {
    Path season = season(false);
    String rest =
        Files.readAllLines(season).stream()
            .filter(line -> !line.matches(".*,2023-03-(19|2[0-5]),.*,2023-0[4-9].*"))
            .collect(Collectors.joining("\n"));
    Files.writeString(season, rest + "\n");
    CommandRun outcome = run("watch", season, "--against", DATA.resolve("grafts-2022.csv"));
    assertThat(outcome.status()).as(outcome.out()).isEqualTo(ExitStatus.FINE);
    assertThat(outcome.out()).contains("No alarm", "The season as a whole");
  }

  /**
   * Planted in datasets/halden-bay-running-season: fridge batch F08, first counted on Tuesday 7
   * July 2026, and the week of 16 March.
   */
  @Test
  void the_batch_and_the_week_planted_in_the_demo_are_found_in_that_order() throws IOException {
    Path json = folder.resolve("watch.json");
    Path running = DATA.resolveSibling("halden-bay-running-season").resolve("grafts-2026.csv");
    CommandRun outcome =
        run(
            "watch",
            running,
            "--json",
            json,
            "--out",
            folder.resolve("page"),
            "--against",
            DATA.resolve("grafts-2022.csv"),
            DATA.resolve("grafts-2023.csv"),
            DATA.resolve("grafts-2024.csv"),
            DATA.resolve("grafts-2025.csv"));
    assertThat(outcome.status()).as(outcome.err()).isEqualTo(ExitStatus.NEEDS_A_PERSON);
    JsonObject found = JsonParser.parseString(Files.readString(json)).getAsJsonObject();
    List<JsonObject> alarms =
        found.getAsJsonArray("alarms").asList().stream().map(JsonElement::getAsJsonObject).toList();
    JsonObject last = alarms.get(alarms.size() - 1);
    assertThat(last.get("day").getAsString()).isBetween("2026-07-07", "2026-07-10");
    assertThat(last.getAsJsonArray("causes").asList())
        .extracting(cause -> cause.getAsJsonObject().get("level").getAsString())
        .startsWith("F08", "2026-03-16");
    assertThat(found.get("notYetDue").getAsInt() + found.get("due").getAsInt())
        .isEqualTo(found.get("notCounted").getAsInt());
    assertThat(outcome.out()).contains("Look at that wood", "due for counting", "Lately");
    assertThat(outcome.out())
        .as("counts at the alarm, and those of the table, say up to when they were counted")
        .containsPattern("Fridge batch F08: 44 of 49 grafts counted up to 2026-07-08 failed")
        .containsPattern("all that was counted up to 2026-07-1\\d, the level .*F08 68 59 ");
    assertThat(folder.resolve("page").resolve("watch.html"))
        .content()
        .contains("<svg", "Not for publication", "fridge batch F08");
  }

  @Test
  void past_seasons_are_replayed_each_against_those_before() throws IOException {
    Path json = folder.resolve("replay.json");
    CommandRun outcome =
        run(
            "watch",
            "--replay",
            "--false-alarms",
            "0.5",
            "--json",
            json,
            DATA.resolve("grafts-2022.csv"),
            season(true));
    assertThat(outcome.status()).as(outcome.err()).isEqualTo(ExitStatus.FINE);
    assertThat(outcome.out())
        .contains("2023, against 1 season: ALARM on 2023-", "fridge batch F3")
        .contains("2022 is the first");
    JsonObject found = JsonParser.parseString(Files.readString(json)).getAsJsonObject();
    assertThat(found.get("falseAlarmsExpected").getAsDouble()).isEqualTo(0.5);
    assertThat(found.getAsJsonArray("seasons")).hasSize(1);
    assertThat(run("watch", "--replay", season(true)).err())
        .contains("a replay needs two seasons or more");
    assertThat(run("watch", season(true)).err()).contains("--against PAST");
  }

  @Test
  void says_what_it_needs() throws IOException {
    Path uncounted =
        Files.writeString(
            folder.resolve("new.csv"),
            """
            cultivar,rootstock,grafter,graft_date,assessed_date,grafts,takes
            Orrin,Ostrey,Kit,2026-03-02,,5,
            """);
    Path past = DATA.resolve("grafts-2022.csv");
    CommandRun none = run("watch", uncounted, "--against", past, "--blank-result", "unassessed");
    assertThat(none.status()).isEqualTo(ExitStatus.FINE);
    assertThat(none.out()).contains("nothing of this season is counted yet (5 grafts");
    assertThat(run("watch", season(false), "--against", past, "--odds", "1").err())
        .contains("must be above 1 times those expected");
    assertThat(run("watch", season(false), "--against", past, "--false-alarms", "0").err())
        .contains("false alarms a season must be above 0");
  }

  @Test
  void the_running_season_among_the_past_ones_is_refused() {
    Path running = DATA.resolve("grafts-2023.csv");
    Path past = DATA.resolve("grafts-2022.csv");
    CommandRun itself = run("watch", running, "--against", past, running);
    assertThat(itself.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(itself.err()).contains("the running season itself", "leave it out");
    CommandRun later = run("watch", past, "--against", running);
    assertThat(later.status()).isEqualTo(ExitStatus.USAGE);
    assertThat(later.err()).contains("found records of 2023, expected seasons before 2022");
  }

  @Test
  void a_season_of_which_nothing_is_counted_is_no_alarm_and_one_set_aside_is_said()
      throws IOException {
    String headings = "season,cultivar,rootstock,grafter,graft_date,assessed_date,grafts,takes\n";
    String begin = "2026,Orrin,Pellin,GR-1,2026-03-02,";
    Path waiting = Files.writeString(folder.resolve("waiting.csv"), headings + begin + ",20,\n");
    CommandRun none = run("watch", waiting, "--against", DATA.resolve("grafts-2022.csv"));
    assertThat(none.status()).as(none.err()).isEqualTo(ExitStatus.FINE);
    assertThat(none.out()).contains("nothing of this season is counted yet (20 grafts");
    Path wrong =
        Files.writeString(folder.resolve("wrong.csv"), headings + begin + "2026-06-01,20,21\n");
    CommandRun aside = run("watch", wrong, "--against", DATA.resolve("grafts-2022.csv"));
    assertThat(aside.status()).isEqualTo(ExitStatus.CANNOT_BE_COMPUTED);
    assertThat(aside.err()).contains("no row of this season could be used: 1 of 1", "check");
  }
}
