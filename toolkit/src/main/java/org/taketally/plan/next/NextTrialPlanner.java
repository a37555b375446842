package org.taketally.plan.next;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.Estimate;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.answers.confounding.Confounding;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.FactorVerdict.Pair;
import org.taketally.answers.verdict.RootstockVerdictCalculator;
import org.taketally.answers.verdict.Verdict;
import org.taketally.answers.verdict.VerdictRules;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.cells.Factor;
import org.taketally.model.CannotFit;
import org.taketally.model.TakeModel;
import org.taketally.plan.forecast.PastSeasons;
import org.taketally.plan.forecast.SeasonForecast;
import org.taketally.plan.layout.LayoutPlan;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.plan.next.NextTrial.OpenPair;
import org.taketally.plan.next.NextTrial.State;
import org.taketally.plan.size.VerdictChances;
import org.taketally.records.GraftRecords;
import org.taketally.records.columns.RecordColumn;
import org.taketally.terms.Plural;

/**
 * Plans what to graft next: the pairs of stocks that aren't settled, side by side on the cultivars
 * most grafted, by the hands most at work, as many as make a verdict likely; and tries by making up
 * their takes what the records would then say.
 */
public final class NextTrialPlanner {

  private static final String ROOTSTOCK = RecordColumn.ROOTSTOCK.columnName();
  private static final int LEAST = 10;

  /** Sets of records of more patterns than this take seconds each to judge. */
  private static final int MANY_CELLS = 1_000;

  private static final int TRIALS = 40;
  private static final int DRAWS = 300;

  private final GraftRecords records;
  private final Settings settings;
  private final TakeModel model;
  private final Cells cells;

  /**
   * What is there to work with.
   *
   * @param answers margin, seed and the rest of what an analysis takes
   * @param grafters hands; empty for those most at work in the records
   * @param days of grafting, dates or names, one or more
   * @param cultivars how many cultivars to graft on, 1 or more
   * @param most grafts there can be in all, 1 or more
   * @param chance wanted that the verdict is settled, above 0 and below 1
   * @param trials made up to try the layout; 0 for as many as a few seconds allow
   */
  public record Settings(
      AnswerOptions answers,
      List<String> grafters,
      List<String> days,
      int cultivars,
      int most,
      double chance,
      int trials) {

    public Settings {
      grafters = List.copyOf(grafters);
      days = List.copyOf(days);
      if (!(chance > 0 && chance < 1)) {
        throw new IllegalArgumentException(
            "the chance wanted must lie between 0 and 1, e.g. 0.8 for 8 in 10, got " + chance);
      }
      if (most < 1 || cultivars < 1 || trials < 0) {
        throw new IllegalArgumentException(
            "there must be 1 graft or more, 1 cultivar or more and 0 trials or more, got %d, %d and %d"
                .formatted(most, cultivars, trials));
      }
    }
  }

  private NextTrialPlanner(GraftRecords records, Settings settings) {
    this.records = records;
    this.settings = settings;
    this.model = SuggestedModel.of(records).model();
    Set<String> columns = new LinkedHashSet<>(SuggestedModel.needed(model));
    this.cells = CellsOf.records(records, columns);
  }

  /**
   * Plans what to graft next.
   *
   * @param records in hand
   * @param settings what is there to work with
   * @return what to graft, and what the verdict would then be
   * @throws IllegalArgumentException if the records name one rootstock only
   * @throws CannotFit if the records let nothing be expected, saying why
   */
  public static NextTrial of(GraftRecords records, Settings settings) {
    records.check().requireSettled();
    return new NextTrialPlanner(records, settings).planned();
  }

  private NextTrial planned() {
    if (model.compared().isEmpty()) {
      throw new IllegalArgumentException(
          "the records name fewer than two rootstocks with 10 assessed grafts, so there is nothing"
              + " to settle; plan a trial of two with plan size and plan layout");
    }
    FactorVerdict now = verdict(cells, settings.answers());
    return switch (now.verdict()) {
      case ENTANGLED -> bridged(now);
      case CANT_TELL_YET, DIFFERS_UNSETTLED -> more(now);
      default ->
          new NextTrial(
              now,
              State.SETTLED,
              List.of(),
              Optional.empty(),
              OptionalDouble.empty(),
              settings.chance(),
              Optional.empty());
    };
  }

  private FactorVerdict verdict(Cells of, AnswerOptions options) {
    return RootstockVerdictCalculator.ofTypeAlone(model, of, options);
  }

  private NextTrial more(FactorVerdict now) {
    double margin = settings.answers().margin();
    List<Pair> open =
        now.size().orElseThrow().pairs().stream()
            .filter(pair -> !pair.equivalent())
            .filter(pair -> !pair.beyond(margin) && !pair.turned().beyond(margin))
            .sorted(Comparator.comparingDouble(pair -> -Math.abs(pair.difference().value())))
            .toList();
    List<OpenPair> named = open.stream().map(p -> new OpenPair(p.level(), p.other())).toList();
    Set<String> stocks = new LinkedHashSet<>();
    named.forEach(pair -> stocks.addAll(List.of(pair.rootstock(), pair.other())));
    if (stocks.isEmpty()) {
      now.levels().forEach(level -> stocks.add(level.level()));
    }
    SettlingChance chance = new SettlingChance(known(now), take(), margin);
    Tried tried = tried(List.copyOf(stocks), cultivars(List.of()), chance);
    return new NextTrial(
        now,
        NextTrial.outOfReach(tried.after, settings.chance())
            ? State.OUT_OF_REACH
            : State.MORE_GRAFTS,
        named,
        Optional.of(tried.layout),
        OptionalDouble.of(chance.with((int) tried.layout.grafts() / stocks.size())),
        settings.chance(),
        Optional.of(tried.after));
  }

  /** A layout and what the records and it would say. */
  private record Tried(TrialLayout layout, VerdictChances after) {}

  /**
   * As many grafts as the widths of ranges ask for; where made-up ones then settle it too seldom,
   * twice as many, and then the most there can be.
   */
  private Tried tried(List<String> stocks, List<String> cultivars, SettlingChance chance) {
    int most = settings.most() / stocks.size();
    int each = chance.fewest(settings.chance(), LEAST, most);
    SeasonForecast seasons =
        SeasonForecast.of(PastSeasons.fit(records), trials(), settings.answers().seed());
    TrialLayout layout = layout(stocks, cultivars, each);
    VerdictChances after = after(layout, seasons);
    for (int next : new int[] {Math.min(most, 2 * each), most}) {
      if (!NextTrial.fallsShort(after, settings.chance())) {
        break;
      }
      TrialLayout larger = layout(stocks, cultivars, next);
      if (larger.grafts() > layout.grafts()) {
        layout = larger;
        after = after(layout, seasons);
      }
    }
    return new Tried(layout, after);
  }

  private int trials() {
    if (settings.trials() > 0) {
      return settings.trials();
    }
    return cells.size() > MANY_CELLS ? VerdictChances.LEAST_TRIALS : TRIALS;
  }

  /** Takes of the stocks; errors such that those of pairs come out as in the verdict. */
  private static List<SettlingChance.Stock> known(FactorVerdict now) {
    List<Pair> pairs = now.size().orElseThrow().pairs();
    double wide = NormalDistribution.of(0, 1).inverseCumulativeProbability(VerdictRules.ONE_SIDED);
    List<SettlingChance.Stock> stocks = new ArrayList<>();
    for (FactorVerdict.LevelTake level : now.levels()) {
      double variance =
          pairs.stream()
              .filter(p -> p.level().equals(level.level()) || p.other().equals(level.level()))
              .mapToDouble(p -> (p.equivalence().high() - p.equivalence().low()) / 2 / wide)
              .map(error -> error * error / 2)
              .average()
              .orElse(0);
      stocks.add(
          new SettlingChance.Stock(
              level.take().map(Estimate::value).orElse(level.tally().rate()),
              Math.sqrt(Math.max(1e-8, variance))));
    }
    return stocks;
  }

  private double take() {
    double take = (double) cells.takesTotal() / cells.graftsTotal();
    return Math.min(0.98, Math.max(0.02, take));
  }

  /**
   * The most used stock of each group never compared with the largest, beside that of the largest.
   */
  private NextTrial bridged(FactorVerdict now) {
    List<Confounding.Group> groups = now.confounding().groups();
    List<String> ends = groups.stream().map(this::mostUsed).toList();
    List<String> stocks = ends.size() > 1 ? ends : List.copyOf(groups.get(0).levels());
    List<OpenPair> pairs =
        stocks.stream().skip(1).map(stock -> new OpenPair(stocks.get(0), stock)).toList();
    double error = settings.answers().margin();
    SettlingChance chance =
        new SettlingChance(
            Collections.nCopies(stocks.size(), new SettlingChance.Stock(take(), error)),
            take(),
            settings.answers().margin());
    Tried tried = tried(stocks, cultivars(stocks.subList(0, 1)), chance);
    return new NextTrial(
        now,
        State.BRIDGE,
        pairs,
        Optional.of(tried.layout),
        OptionalDouble.empty(),
        settings.chance(),
        Optional.of(tried.after));
  }

  private String mostUsed(Confounding.Group group) {
    Map<String, Long> grafts = grafts(ROOTSTOCK, Map.of());
    return group.levels().stream()
        .max(Comparator.comparingLong(level -> grafts.getOrDefault(level, 0L)))
        .orElseThrow();
  }

  /** Grafts by level of a column, of the cells that have the given levels. */
  private Map<String, Long> grafts(String column, Map<String, List<String>> where) {
    Map<String, Long> counts = new LinkedHashMap<>();
    Optional<Factor> factor = cells.findFactor(column);
    if (factor.isEmpty()) {
      return counts;
    }
    for (int i = 0; i < cells.size(); i++) {
      int cell = i;
      boolean meant =
          where.entrySet().stream().allMatch(e -> e.getValue().contains(level(e.getKey(), cell)));
      String level = level(column, i);
      if (meant && level != null) {
        counts.merge(level, (long) cells.grafts(i), Long::sum);
      }
    }
    return counts;
  }

  private String level(String column, int cell) {
    return cells
        .findFactor(column)
        .map(f -> f.code(cell) < 0 ? null : f.levels().get(f.code(cell)))
        .orElse(null);
  }

  private static List<String> largest(Map<String, Long> counts, int most) {
    return counts.entrySet().stream()
        .sorted(Map.Entry.<String, Long>comparingByValue().reversed())
        .limit(most)
        .map(Map.Entry::getKey)
        .toList();
  }

  private List<String> cultivars(List<String> onStocks) {
    Map<String, List<String>> where = onStocks.isEmpty() ? Map.of() : Map.of(ROOTSTOCK, onStocks);
    return largest(grafts(RecordColumn.CULTIVAR.columnName(), where), settings.cultivars());
  }

  private List<String> hands() {
    if (!settings.grafters().isEmpty()) {
      return settings.grafters();
    }
    Optional<Factor> seasons = cells.findFactor(RecordColumn.SEASON.columnName());
    Map<String, List<String>> last =
        seasons.isPresent() && seasons.get().size() > 0
            ? Map.of(
                RecordColumn.SEASON.columnName(),
                List.of(
                    seasons.get().levels().stream().max(Comparator.naturalOrder()).orElseThrow()))
            : Map.of();
    List<String> hands = largest(grafts(RecordColumn.GRAFTER.columnName(), last), 2);
    return hands.isEmpty() ? List.of("hand 1") : hands;
  }

  private TrialLayout layout(List<String> stocks, List<String> cultivars, int graftsPerStock) {
    List<String> hands = hands();
    int plotsPerStock = cultivars.size() * hands.size() * settings.days().size();
    int mostPerPlot = settings.most() / (plotsPerStock * stocks.size());
    if (mostPerPlot == 0) {
      throw new IllegalArgumentException(
          "--most: found %,d, expected %,d grafts or more, one a plot: %s on %s, by %s, on %s; allow more, or graft fewer cultivars (--cultivars), on fewer days (--days) or by fewer hands (--grafters)"
              .formatted(
                  settings.most(),
                  plotsPerStock * stocks.size(),
                  Plural.of(cultivars.size(), RecordColumn.CULTIVAR.columnName()),
                  Plural.of(stocks.size(), ROOTSTOCK),
                  Plural.of(hands.size(), "hand"),
                  Plural.of(settings.days().size(), "day")));
    }
    int perPlot = Math.min(mostPerPlot, (graftsPerStock + plotsPerStock - 1) / plotsPerStock);
    return TrialLayout.of(
        LayoutPlan.of(cultivars, stocks, hands, settings.days())
            .withGraftsPerPlot(perPlot)
            .withSeed(settings.answers().seed()));
  }

  /** Each trial a season that may come, its takes made up, the whole judged by the rules. */
  private VerdictChances after(TrialLayout layout, SeasonForecast seasons) {
    int trials = trials();
    AnswerOptions options =
        settings.answers().withDraws(Math.min(DRAWS, settings.answers().draws()));
    AddedGrafts added = new AddedGrafts(cells, layout, seasons);
    List<Verdict> verdicts =
        IntStream.range(0, trials)
            .parallel()
            .mapToObj(i -> verdictOf(added.drawn(i, settings.answers().seed()), options))
            .filter(Objects::nonNull)
            .toList();
    Map<Verdict, Integer> counts = new EnumMap<>(Verdict.class);
    verdicts.forEach(verdict -> counts.merge(verdict, 1, Integer::sum));
    return new VerdictChances(counts, trials - verdicts.size(), trials);
  }

  private Verdict verdictOf(Cells drawn, AnswerOptions options) {
    try {
      return verdict(drawn, options).verdict();
    } catch (CannotFit unanswered) {
      return null;
    }
  }
}
