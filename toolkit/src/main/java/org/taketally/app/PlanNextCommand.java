package org.taketally.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.taketally.answers.AnswerOptions;
import org.taketally.files.FileSet;
import org.taketally.plan.layout.LayoutSheet;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.plan.next.NextTrial;
import org.taketally.plan.next.NextTrialPlanner;
import org.taketally.publish.BenchSheet;
import org.taketally.publish.NextTrialPage;
import org.taketally.publish.PlotLabels;
import org.taketally.records.GraftRecords;
import org.taketally.wording.NextTrialWords;
import org.taketally.wording.TrialLayoutWords;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What to graft next so that records in hand settle whether the rootstock matters. */
@Command(
    name = "next",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description =
        "Says which cultivars to graft on which stocks next, how many, by which hands, so that your"
            + " records most likely settle whether the rootstock matters; lays the grafts out and"
            + " tries what the verdict would be.")
final class PlanNextCommand implements Callable<Integer> {

  private static final String[] FILES = {
    "next.html", "trial.csv", "bench-sheet.html", "labels.html"
  };

  @Spec private CommandSpec spec;
  @Mixin private RecordsOptions input;
  @Mixin private OutFolder out;
  @Mixin private JsonOut json;

  @Option(
      names = "--grafters",
      split = ",",
      paramLabel = "NAME",
      description = "Who grafts; without it the two most at work in the last season.")
  private List<String> grafters = new ArrayList<>();

  @Option(
      names = "--days",
      split = ",",
      paramLabel = "DAY",
      defaultValue = "3",
      description = "Days of grafting: a number, or dates (${DEFAULT-VALUE}).")
  private List<String> days = new ArrayList<>();

  @Option(
      names = "--cultivars",
      paramLabel = "N",
      converter = TypedValues.Count.class,
      defaultValue = "4",
      description = "How many cultivars to graft on: those most grafted (${DEFAULT-VALUE}).")
  private int cultivars;

  @Option(
      names = "--most",
      paramLabel = "GRAFTS",
      converter = TypedValues.Count.class,
      defaultValue = "2000",
      description = "Most grafts there can be in all (${DEFAULT-VALUE}).")
  private int most;

  @Option(
      names = "--chance",
      paramLabel = "PERCENT",
      defaultValue = "80",
      converter = Percent.class,
      description = "Chance wanted that it is settled (${DEFAULT-VALUE}).")
  private double chance;

  @Mixin private MarginOption margin = new MarginOption();

  @Option(
      names = "--trials",
      paramLabel = "N",
      converter = TypedValues.Trials.class,
      description =
          "Sets of grafts made up to try it; more say more exactly (without it 12 to 40, by the"
              + " size of the records).")
  private Integer trials;

  @Mixin private SeedOption seed = new SeedOption();

  @Override
  public Integer call() throws IOException {
    if (out.asked()) {
      out.files("plan next", input.files()).requireFree(FILES);
    }
    GraftRecords records = input.read();
    PrintWriter err = spec.commandLine().getErr();
    err.println(RecordsOptions.whatWasRead(records.check()));
    err.flush();
    NextTrial next =
        NextTrialPlanner.of(
            records,
            new NextTrialPlanner.Settings(
                AnswerOptions.defaults().withMargin(margin.value()).withSeed(seed.value()),
                grafters,
                TrialDays.names(spec.commandLine(), days),
                cultivars,
                most,
                chance,
                trials == null ? 0 : trials));
    NextTrialWords words = NextTrialWords.of(next);
    if (!json.alone()) {
      Printing printing = new Printing(spec.commandLine().getOut());
      printing.heading("What to graft next");
      printing.paragraphs(words.headline());
      words.more().forEach(printing::paragraphs);
      if (next.layout().isPresent()) {
        printing.heading("The layout");
        TrialLayoutWords layout = TrialLayoutWords.of(next.layout().get());
        printing.paragraphs(layout.headline());
        layout.more().forEach(printing::paragraphs);
      }
    }
    if (out.asked()) {
      err.println("written: " + write(next));
      err.flush();
    }
    json.write(words.json(), out, input.files());
    return ExitStatus.FINE;
  }

  private Path write(NextTrial next) throws IOException {
    FileSet files =
        out.files("plan next", input.files()).add(FILES[0], NextTrialPage.of(next).html());
    if (next.layout().isPresent()) {
      TrialLayout layout = next.layout().get();
      files
          .add(FILES[1], LayoutSheet.of(layout, "").csv())
          .add(FILES[2], BenchSheet.of(layout, "").html())
          .add(FILES[3], PlotLabels.html(layout, ""));
    }
    return files.write().get(0);
  }
}
