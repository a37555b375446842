package org.taketally.app;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.taketally.plan.size.TrialQuestion;
import org.taketally.plan.size.TrialSize;
import org.taketally.plan.size.TrialUnits;
import org.taketally.publish.TrialSizePage;
import org.taketally.wording.PlanJson;
import org.taketally.wording.TrialSizeWords;
import org.taketally.wording.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How many grafts a comparison of two stocks takes. */
@Command(
    name = "size",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description =
        "Says how many grafts it takes to find a difference between two stocks, and to show that"
            + " there is none that matters.")
final class PlanSizeCommand implements Callable<Integer> {

  private static final int MOST_IN_BED = 10_000;

  private static final double MOST_TAKE = 0.9999;

  /** Takes off what binary fractions add to 0.8 - 0.1. */
  private static final double EXACT = 1e-9;

  @Spec private CommandSpec spec;
  @Mixin private OutFolder out;
  @Mixin private JsonOut json;

  @Option(
      names = "--take",
      required = true,
      paramLabel = "PERCENT",
      converter = Percent.class,
      description = "Take supposed on the first stock, per cent.")
  private double take;

  @Option(
      names = "--other-take",
      paramLabel = "PERCENT",
      converter = Percent.class,
      description = "Take supposed on the second stock; without it, lower by the margin.")
  private Double otherTake;

  @Mixin private MarginOption margin = new MarginOption();

  @Option(
      names = "--power",
      paramLabel = "PERCENT",
      defaultValue = "80",
      converter = Percent.class,
      description = "Chance wanted that the trial shows what is true (${DEFAULT-VALUE}).")
  private double power;

  @Option(
      names = "--second-per-first",
      paramLabel = "N",
      defaultValue = "1",
      description = "Grafts on the second stock per graft on the first (${DEFAULT-VALUE}).")
  private double secondPerFirst;

  @Option(
      names = "--off-type",
      paramLabel = "PERCENT",
      defaultValue = "0",
      converter = Percent.OrNone.class,
      description = "Share of seedling stocks that aren't true to type (${DEFAULT-VALUE}).")
  private double offType;

  @Option(
      names = "--shared-spread",
      paramLabel = "POINTS",
      converter = MarginOption.Points.class,
      description =
          "How far take differs between the hands, days and cultivars that both stocks share alike,"
              + " standard deviation; without it they are supposed to take alike, which asks for"
              + " somewhat more grafts.")
  private Double sharedSpread;

  @Option(
      names = "--bed",
      paramLabel = "GRAFTS",
      description =
          "Stocks come by the bed, tray or day: each holds one stock and so many grafts. Without it"
              + " stocks stand side by side.")
  private Integer bed;

  @Option(
      names = "--bed-spread",
      paramLabel = "POINTS",
      defaultValue = "9",
      converter = MarginOption.Points.class,
      description =
          "How far whole beds of one stock differ in take, standard deviation (${DEFAULT-VALUE};"
              + " common practice, no source).")
  private double bedSpread;

  @Option(
      names = "--most-beds",
      paramLabel = "N",
      description = "Most beds, trays or days there can be of each stock.")
  private Integer mostBeds;

  @Override
  public Integer call() throws IOException {
    double second = secondTake();
    requireSeen("--take", take);
    requireSeen("--other-take", second);
    if (!(power > TrialQuestion.LEAST_POWER)) {
      throw wrong(
          "--power: a chance of %s is had by luck alone; expected more than 5 and under 100 per cent, e.g. 80"
              .formatted(Words.statedPercent(power)));
    }
    double shared = sharedSpread == null ? 0 : sharedSpread;
    double most = TrialQuestion.mostSharedSpread(take, second);
    if (shared > most) {
      throw wrong(
          "--shared-spread: hands, days and cultivars can't differ by %s about takes of %s and %s and still be averaged out; give at most %d"
              .formatted(
                  Words.statedPoints(shared),
                  Words.statedPercent(take),
                  Words.statedPercent(second),
                  (int) (100 * most)));
    }
    TrialQuestion question =
        TrialQuestion.of(take, second)
            .withMargin(margin.value())
            .withPower(power)
            .withSecondPerFirst(secondPerFirst)
            .withOffType(offType)
            .withSharedSpread(shared);
    TrialSize size = TrialSize.of(question, units(second));
    if (!json.alone()) {
      print(TrialSizeWords.of(size));
    }
    if (out.asked()) {
      Path page =
          out.files("plan size", List.of())
              .add("size.html", TrialSizePage.of(size).html())
              .write()
              .get(0);
      spec.commandLine().getErr().println("page written: " + page);
      spec.commandLine().getErr().flush();
    }
    json.write(PlanJson.of(size), out, List.of());
    return ExitStatus.FINE;
  }

  private double secondTake() {
    if (otherTake != null) {
      return otherTake;
    }
    double second = Math.round((take - margin.value()) / EXACT) * EXACT;
    if (!(second > 0)) {
      throw wrong(
          "--take: a take of %s can't be lower by %s; say --other-take"
              .formatted(Words.statedPercent(take), Words.statedPoints(margin.value())));
    }
    return second;
  }

  private void requireSeen(String option, double percent) {
    if (percent > MOST_TAKE) {
      throw wrong(
          "%s: found %s, expected per cent from 1 to 99.99, e.g. 99; of takes nearer to all no trial could be made"
              .formatted(option, 100 * percent));
    }
  }

  private TrialUnits units(double second) {
    if (bed == null) {
      OptionsTogether.refuse(
          spec.commandLine(), "needs --bed, the grafts in one bed", "--most-beds", "--bed-spread");
      return TrialUnits.singleGrafts();
    }
    if (bed > MOST_IN_BED) {
      throw wrong(
          "--bed: found %d, expected 1 to %,d grafts in one bed, tray or day; give the grafts of one"
              .formatted(bed, MOST_IN_BED));
    }
    TrialUnits units = TrialUnits.beds(bed, bedSpread);
    for (double about : new double[] {take, second}) {
      if (!units.canDiffer(about)) {
        throw wrong(
            "--bed-spread: beds can't differ by %s about a take of %s; give less"
                .formatted(Words.statedPoints(bedSpread), Words.statedPercent(about)));
      }
    }
    return mostBeds == null ? units : units.atMost(mostBeds);
  }

  private ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }

  private void print(TrialSizeWords words) {
    Printing printing = new Printing(spec.commandLine().getOut());
    printing.heading("How many grafts");
    printing.paragraphs(words.difference());
    printing.paragraphs(words.equivalence());
    List<List<String>> rows = words.table();
    if (!rows.isEmpty()) {
      printing.heading("Chance of showing it");
      TextTable.lines(TrialSizeWords.headings(), rows).forEach(printing::line);
    }
    printing.heading("What this rests on");
    words.more().forEach(printing::paragraphs);
  }
}
