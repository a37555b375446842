package org.taketally.app;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.taketally.publish.WatchPage;
import org.taketally.records.GraftRecords;
import org.taketally.records.checks.LevelCount;
import org.taketally.watch.SeasonLots;
import org.taketally.watch.SeasonReplay;
import org.taketally.watch.SeasonWatch;
import org.taketally.watch.WatchedSeason;
import org.taketally.wording.SeasonReplayWords;
import org.taketally.wording.TakeWatchWords;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Whether the running season is going wrong. */
@Command(
    name = "watch",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Says whether the running season (FILE) is going wrong, against records of past ones"
          + " (--against), and what failing lots have in common.",
      "Exit status: 0 no alarm (also where nothing is counted yet), 1 alarm, 2 usage, 3 nothing"
          + " can be expected of these records, or none of them could be used."
    })
final class WatchCommand implements Callable<Integer> {

  /** Levels of a column printed; the page has more. */
  private static final int LEVELS = 3;

  @Spec private CommandSpec spec;
  @Mixin private RecordsOptions input;
  @Mixin private OutFolder out;
  @Mixin private JsonOut json;

  @Option(
      names = "--against",
      arity = "1..*",
      paramLabel = "PAST",
      description = "Records of past seasons, read in the same way.")
  private List<Path> past = new ArrayList<>();

  @Option(
      names = "--false-alarms",
      paramLabel = "N",
      defaultValue = "0.2",
      description =
          "How often it may cry wolf in a season in which all is well (${DEFAULT-VALUE}: one season"
              + " in five).")
  private double falseAlarms;

  @Option(
      names = "--odds",
      paramLabel = "N",
      defaultValue = "2",
      description =
          "Odds of failing to find fast, against those expected (${DEFAULT-VALUE}: twice).")
  private double odds;

  @Mixin private SeedOption seed = new SeedOption();

  @Option(
      names = "--replay",
      description =
          "Watch each season of FILE... against those before it instead: what would have been"
              + " caught, and how often it would have cried wolf.")
  private boolean replay;

  @Override
  public Integer call() throws IOException {
    return replay ? replayed() : watched();
  }

  private Integer watched() throws IOException {
    if (past.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(),
          "say what to expect: --against PAST..., the sheets of past seasons (or --replay to watch"
              + " past seasons themselves)");
    }
    List<Path> inputs = new ArrayList<>(input.files());
    inputs.addAll(past);
    if (out.asked()) {
      out.files("watch", inputs).requireFree("watch.html");
    }
    requireOthers();
    GraftRecords before = input.read(past);
    say("past seasons: " + RecordsOptions.whatWasRead(before.check()));
    GraftRecords now = input.read();
    say("this season: " + RecordsOptions.whatWasRead(now.check()));
    requireEarlier(before, now);
    SeasonLots lots = SeasonLots.of(now);
    if (lots.counted().isEmpty()) {
      return nothingCounted(lots, now, inputs);
    }
    WatchedSeason season = SeasonWatch.of(lots, before, settings());
    TakeWatchWords words = TakeWatchWords.of(season);
    List<String> rests = words.restsOn(lots, falseAlarms, odds);
    if (!json.alone()) {
      print(words, rests);
    }
    if (out.asked()) {
      Path page =
          out.files("watch", inputs)
              .add("watch.html", WatchPage.of(season, rests).html())
              .write()
              .get(0);
      say("page written: " + page);
    }
    json.write(words.json(lots), out, inputs);
    return season.watch().alarms().isEmpty() ? ExitStatus.FINE : ExitStatus.NEEDS_A_PERSON;
  }

  /** The running season among the past ones would teach that its failures are usual. */
  private void requireOthers() throws IOException {
    for (Path running : input.files()) {
      for (Path other : past) {
        if (Files.isRegularFile(running)
            && Files.isRegularFile(other)
            && Files.mismatch(running, other) < 0) {
          throw new ParameterException(
              spec.commandLine(),
              "--against: found %s, which is the running season itself or a copy of it, expected records of past seasons; leave it out"
                  .formatted(other));
        }
      }
    }
  }

  private void requireEarlier(GraftRecords before, GraftRecords now) {
    Optional<String> first =
        now.check().seasons().stream().map(LevelCount::level).min(Comparator.naturalOrder());
    List<String> notEarlier =
        before.check().seasons().stream()
            .map(LevelCount::level)
            .filter(season -> first.isPresent() && season.compareTo(first.get()) >= 0)
            .sorted()
            .toList();
    if (!notEarlier.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(),
          "--against: found records of %s, expected seasons before %s, which is watched; leave those records out, or correct their dates"
              .formatted(String.join(", ", notEarlier), first.get()));
    }
  }

  private Integer nothingCounted(SeasonLots lots, GraftRecords now, List<Path> inputs)
      throws IOException {
    if (now.check().provenance().rowsKept() == 0) {
      throw new CannotCompute(
          "no row of this season could be used: %d of %d were set aside; run \"taketally check\" on the same file to see why, correct them and watch again"
              .formatted(
                  now.check().provenance().rowsSetAside(), now.check().provenance().rowsRead()));
    }
    if (lots.withoutDay() > 0) {
      throw new CannotCompute(TakeWatchWords.noDay(lots));
    }
    if (!json.alone()) {
      Printing printing = new Printing(spec.commandLine().getOut());
      printing.heading("Is this season going wrong?");
      printing.paragraphs(TakeWatchWords.nothingCounted(lots));
    }
    if (out.asked()) {
      say("no page is written, as nothing is counted yet");
    }
    JsonObject result = new JsonObject();
    result.addProperty("alarm", false);
    result.addProperty("grafts", 0);
    result.addProperty("notCounted", lots.notCounted());
    json.write(result, out, inputs);
    return ExitStatus.FINE;
  }

  private Integer replayed() throws IOException {
    if (!past.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(),
          "--replay watches each season of FILE... against those before it; leave --against out");
    }
    GraftRecords records = input.read();
    say(RecordsOptions.whatWasRead(records.check()));
    SeasonReplay seasons = SeasonReplay.of(records, settings());
    SeasonReplayWords words = SeasonReplayWords.of(seasons, falseAlarms);
    if (!json.alone()) {
      Printing printing = new Printing(spec.commandLine().getOut());
      printing.heading("What would watching have caught?");
      printing.paragraphs(words.headline());
      words.more().forEach(printing::paragraphs);
    }
    if (out.asked()) {
      Path page =
          out.files("watch", input.files())
              .add("replay.html", WatchPage.of(seasons, falseAlarms).html())
              .write()
              .get(0);
      say("page written: " + page);
    }
    json.write(words.json(), out, input.files());
    return ExitStatus.FINE;
  }

  private SeasonWatch.Settings settings() {
    return new SeasonWatch.Settings(odds, falseAlarms, seed.value());
  }

  private void say(String line) {
    PrintWriter err = spec.commandLine().getErr();
    err.println(line);
    err.flush();
  }

  private void print(TakeWatchWords words, List<String> rests) {
    Printing printing = new Printing(spec.commandLine().getOut());
    printing.heading("Is this season going wrong?");
    printing.paragraphs(words.headline());
    words.earlier().forEach(printing::paragraphs);
    printing.paragraphs(words.lately());
    printing.paragraphs(words.wholeSeason());
    if (!words.causes().isEmpty()) {
      printing.heading("What to check first");
      words.causes().forEach(printing::paragraphs);
    }
    printing.heading(words.seenTitle());
    TextTable.lines(TakeWatchWords.seenHeadings(), words.seen(LEVELS)).forEach(printing::line);
    printing.heading("What this rests on");
    rests.forEach(printing::paragraphs);
  }
}
