package org.taketally.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.taketally.records.GraftRecords;
import org.taketally.watch.SeasonLots;
import org.taketally.watch.SeasonWatch;
import org.taketally.watch.WatchedSeason;
import org.taketally.wording.TakeWatchWords;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Whether the running season is going wrong. */
@Command(
    name = "watch",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Says whether the running season (FILE) is going wrong, against records of past ones"
          + " (--against), and what failing lots have in common.",
      "Exit status: 0 no alarm, 1 alarm, 2 usage, 3 nothing can be expected of these records."
    })
final class WatchCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;
  @Mixin private RecordsOptions input;
  @Mixin private OutFolder out;
  @Mixin private JsonOut json;

  @Option(
      names = "--against",
      required = true,
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

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Seed of everything random; the same seed gives the same result.")
  private long seed;

  @Override
  public Integer call() throws IOException {
    GraftRecords before = input.read(past);
    PrintWriter err = spec.commandLine().getErr();
    err.println("past seasons: " + RecordsOptions.counts(before.check()));
    GraftRecords now = input.read();
    err.println("this season: " + RecordsOptions.counts(now.check()));
    err.flush();
    SeasonLots lots = SeasonLots.of(now);
    WatchedSeason season =
        SeasonWatch.of(lots, before, new SeasonWatch.Settings(odds, falseAlarms, seed));
    TakeWatchWords words = TakeWatchWords.of(season);
    if (!json.alone()) {
      Printing printing = new Printing(spec.commandLine().getOut());
      printing.heading("Is this season going wrong?");
      printing.paragraphs(words.headline());
      words.earlier().forEach(printing::paragraphs);
      printing.paragraphs(words.wholeSeason());
      if (!words.causes().isEmpty()) {
        printing.heading("What to check first");
        words.causes().forEach(printing::paragraphs);
      }
      printing.heading("What this rests on");
      words.restsOn(lots, falseAlarms, odds).forEach(printing::paragraphs);
    }
    List<Path> inputs = new ArrayList<>(input.files());
    inputs.addAll(past);
    json.write(words.json(lots), out, inputs);
    return season.watch().alarms().isEmpty() ? ExitStatus.FINE : ExitStatus.NEEDS_A_PERSON;
  }
}
