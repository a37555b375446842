package org.taketally.app;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.taketally.answers.AnswerOptions;
import org.taketally.plan.layout.LayoutPlan;
import org.taketally.plan.layout.LayoutPlan.Arrangement;
import org.taketally.plan.layout.LayoutSheet;
import org.taketally.plan.layout.PlannedCells;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.plan.size.TrialTruth;
import org.taketally.plan.size.VerdictChances;
import org.taketally.publish.BenchSheet;
import org.taketally.publish.PlotLabels;
import org.taketally.wording.PlanJson;
import org.taketally.wording.TrialLayoutWords;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** Which graft goes where, and what the trial could show. */
@Command(
    name = "layout",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description =
        "Lays a trial out: who grafts what, when and in which order. Writes a sheet to fill in"
            + " that reads back as records, a bench sheet and labels to print.")
final class PlanLayoutCommand implements Callable<Integer> {

  private static final String[] FILES = {"trial.csv", "bench-sheet.html", "labels.html"};

  @Spec private CommandSpec spec;
  @Mixin private JsonOut json;
  @Mixin private OutFolder out;

  @Option(
      names = "--cultivars",
      required = true,
      split = ",",
      paramLabel = "A,B",
      description = "Cultivars to graft.")
  private List<String> cultivars = new ArrayList<>();

  @Option(
      names = "--stocks",
      required = true,
      split = ",",
      paramLabel = "X,Y",
      description = "Rootstocks to compare.")
  private List<String> stocks = new ArrayList<>();

  @Option(
      names = "--grafters",
      required = true,
      split = ",",
      paramLabel = "G,H",
      description = "Who grafts; codes will do.")
  private List<String> grafters = new ArrayList<>();

  @Option(
      names = "--days",
      required = true,
      split = ",",
      paramLabel = "DAYS",
      description = "How many days, e.g. 3, or their dates, e.g. 2027-03-01,2027-03-08.")
  private List<String> days = new ArrayList<>();

  @Option(
      names = "--grafts-per-plot",
      paramLabel = "N",
      defaultValue = "1",
      description = "Grafts of one pairing made one after the other (${DEFAULT-VALUE}).")
  private int graftsPerPlot;

  @Option(
      names = "--plots-per-session",
      paramLabel = "N",
      defaultValue = "0",
      description = "Most plots one hand can do in a day; all pairings if not said.")
  private int plotsPerSession;

  @Option(
      names = "--arrangement",
      paramLabel = "KIND",
      defaultValue = "blocks",
      converter = Arrangements.class,
      description =
          "blocks, latin-square (each pairing once with each grafter and once a day) or split-plot"
              + " (stocks by the bed) (${DEFAULT-VALUE}).")
  private Arrangement arrangement;

  @Option(
      names = "--on-hand",
      split = ",",
      paramLabel = "NAME=GRAFTS",
      description =
          "Grafts that the plants of a stock, or the wood of a cultivar, are enough for; may be"
              + " repeated.")
  private Map<String, Integer> onHand = new LinkedHashMap<>();

  @Option(
      names = "--site",
      paramLabel = "NAME",
      defaultValue = "",
      description = "Where the trial stands.")
  private String site;

  @Option(
      names = "--suppose",
      split = ",",
      paramLabel = "STOCK=PERCENT",
      description =
          "Take supposed on each stock: says how likely each verdict is, by making the trial up"
              + " and analysing it like records.")
  private Map<String, String> supposed = new LinkedHashMap<>();

  @Option(
      names = "--trials",
      paramLabel = "N",
      converter = TypedValues.Trials.class,
      defaultValue = "100",
      description = "Trials made up for --suppose (${DEFAULT-VALUE}); more take longer.")
  private int trials;

  @Mixin private MarginOption margin = new MarginOption();

  @Mixin private SeedOption seed = new SeedOption();

  /** Arrangements as typed. */
  static final class Arrangements implements ITypeConverter<Arrangement> {
    @Override
    public Arrangement convert(String typed) {
      return switch (typed) {
        case "blocks" -> Arrangement.BLOCKS;
        case "latin-square" -> Arrangement.LATIN_SQUARE;
        case "split-plot" -> Arrangement.SPLIT_PLOT;
        default ->
            throw new TypeConversionException(
                "found \"%s\", expected blocks, latin-square or split-plot".formatted(typed));
      };
    }
  }

  @Override
  public Integer call() throws IOException {
    OptionsTogether.requireNamesOnce(spec.commandLine(), "--on-hand");
    OptionsTogether.requireNamesOnce(spec.commandLine(), "--suppose");
    if (supposed.isEmpty()) {
      OptionsTogether.refuse(
          spec.commandLine(), "needs --suppose, the take of each stock", "--trials", "--margin");
    }
    out.files("plan layout", List.of()).requireFree(FILES);
    TrialLayout layout = TrialLayout.of(plan());
    Optional<VerdictChances> chances =
        supposed.isEmpty() ? Optional.empty() : Optional.of(chances(layout));
    Path sheet = write(layout);
    if (!json.alone()) {
      print(layout, chances);
      new Printing(spec.commandLine().getOut())
          .paragraphs(
              "Written to %s: trial.csv (fill in takes and dates, then read it as records), bench-sheet.html and labels.html to print."
                  .formatted(sheet.toAbsolutePath().getParent()));
    }
    JsonObject result = PlanJson.of(layout);
    chances.ifPresent(found -> result.add("supposed", PlanJson.of(found)));
    json.write(result, out, List.of());
    return ExitStatus.FINE;
  }

  private Path write(TrialLayout layout) throws IOException {
    return out.files("plan layout", List.of())
        .add(FILES[0], LayoutSheet.of(layout, site).csv())
        .add(FILES[1], BenchSheet.of(layout, site).html())
        .add(FILES[2], PlotLabels.html(layout, site))
        .write()
        .get(0);
  }

  private LayoutPlan plan() {
    Map<String, Integer> plants = new LinkedHashMap<>(onHand);
    plants.keySet().retainAll(stocks);
    Map<String, Integer> wood = new LinkedHashMap<>(onHand);
    wood.keySet().removeAll(stocks);
    return LayoutPlan.of(cultivars, stocks, grafters, TrialDays.names(spec.commandLine(), days))
        .withGraftsPerPlot(graftsPerPlot)
        .withPlotsPerSession(plotsPerSession)
        .withArrangement(arrangement)
        .withSupplies(plants, wood)
        .withSeed(seed.value());
  }

  private VerdictChances chances(TrialLayout layout) {
    Map<String, Double> takes = new LinkedHashMap<>();
    for (Map.Entry<String, String> entry : supposed.entrySet()) {
      if (!stocks.contains(entry.getKey())) {
        throw new ParameterException(
            spec.commandLine(),
            "--suppose: no rootstock \"%s\" in this trial; there are %s"
                .formatted(entry.getKey(), String.join(", ", stocks)));
      }
      takes.put(entry.getKey(), new Percent().convert(entry.getValue()));
    }
    if (stocks.size() < 2) {
      throw new ParameterException(
          spec.commandLine(), "--suppose compares rootstocks, and this trial has only one");
    }
    PrintWriter err = spec.commandLine().getErr();
    err.println("making up and analysing %d trials".formatted(trials));
    err.flush();
    return VerdictChances.of(
        PlannedCells.of(layout),
        new VerdictChances.Settings(
            new TrialTruth(takes, TrialTruth.USUAL_SPREADS),
            AnswerOptions.defaults()
                .withMargin(margin.value())
                .withSeed(seed.value())
                .withDraws(500),
            trials,
            done -> {
              if (done % Math.max(1, trials / 4) == 0) {
                err.println("%d of %d".formatted(done, trials));
                err.flush();
              }
            }));
  }

  private void print(TrialLayout layout, Optional<VerdictChances> chances) {
    Printing printing = new Printing(spec.commandLine().getOut());
    TrialLayoutWords words = TrialLayoutWords.of(layout);
    printing.heading("The layout");
    printing.paragraphs(words.headline());
    words.more().forEach(printing::paragraphs);
    if (chances.isPresent()) {
      printing.heading("What it could show");
      printing.paragraphs(TrialLayoutWords.chances(chances.get()));
      printing.paragraphs(TrialLayoutWords.supposed());
    }
    printing.line("");
  }
}
