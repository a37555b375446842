package org.taketally.plan.order;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.taketally.terms.Interval;

/**
 * How many grafts to make, and sticks to cut, for an order book.
 *
 * @param lines one a line of the book, in its order
 * @param terms what was asked for
 * @param seasons seasons of grafting that the lines belong to, by the days they are due; at least
 *     one
 */
public record GraftOrder(List<Line> lines, OrderTerms terms, List<Season> seasons) {

  private static final double BAD_SEASON = 0.10;

  public GraftOrder {
    lines = List.copyOf(lines);
    seasons = List.copyOf(seasons);
  }

  /**
   * A line of the book and what is known of its grafts.
   *
   * @param line the line
   * @param takes shares of grafts that end as saleable trees, season by season; lines of one order
   *     have the same number of seasons, and the same place means the same season
   */
  public record Ordered(OrderLine line, SeasonTakes takes) {}

  /**
   * What a line needs.
   *
   * @param line the line of the book
   * @param share share of grafts expected to end as saleable trees, 0 to 1
   * @param shareRange from season to season and with all that is uncertain, 8 seasons in 10
   * @param byRate what making by the rate would give; empty if that is more than {@value
   *     GraftsNeeded#MOST} grafts
   * @param grafts fewest grafts for the assurance; empty if {@value GraftsNeeded#MOST} don't give
   *     it
   * @param sticks sticks to cut for them; empty likewise
   * @param trees trees expected from them, at least and at most in 8 seasons of 10; empty likewise
   * @param cost of the grafts; empty likewise, or if no cost was said
   */
  public record Line(
      OrderLine line,
      double share,
      Interval shareRange,
      Optional<ByRate> byRate,
      OptionalInt grafts,
      OptionalInt sticks,
      Optional<TreeRange> trees,
      OptionalDouble cost) {}

  /**
   * Lines that are grafted in one season, as far as the days they are due tell: lines due {@value
   * #MONTHS} months or more after the first are of the next.
   *
   * @param lines of the order, in the order of the book
   * @param probabilityOfAll chance that every one of them has its trees when their grafts are made,
   *     all meeting the same season, 0 to 1; empty if some line can't be had
   */
  public record Season(List<Line> lines, OptionalDouble probabilityOfAll) {

    /** Lines due so many months or more after the first of a season belong to the next. */
    public static final int MONTHS = DueSeasons.MONTHS;

    public Season {
      lines = List.copyOf(lines);
    }

    /**
     * The first day a line is due.
     *
     * @return empty if no line says one
     */
    public Optional<LocalDate> from() {
      return due().findFirst();
    }

    /**
     * The last day a line is due.
     *
     * @return empty if no line says one
     */
    public Optional<LocalDate> to() {
      return due().reduce((one, later) -> later);
    }

    private Stream<LocalDate> due() {
      return lines.stream().flatMap(line -> line.line().due().stream()).sorted();
    }

    /**
     * Grafts to make.
     *
     * @return sum over lines that can be had
     */
    public long graftsNeeded() {
      return grafts(lines);
    }

    /**
     * Sticks to cut.
     *
     * @return sum over lines that can be had
     */
    public long sticksNeeded() {
      return sticks(lines);
    }
  }

  /**
   * What is often made, and what comes of it.
   *
   * @param grafts trees divided by the share, rounded up
   * @param probability chance that so many are enough, 0 to 1
   * @param shortInBadSeason trees missing in the worst season of ten if no more are made, as a
   *     share of the trees wanted, 0 to 1
   */
  public record ByRate(int grafts, double probability, double shortInBadSeason) {}

  /**
   * Trees to expect of some grafts.
   *
   * @param low at least so many in 9 seasons of 10
   * @param expected on average
   * @param high more than so many in at most 1 season of 10
   */
  public record TreeRange(int low, double expected, int high) {}

  /**
   * What the book needs.
   *
   * @param ordered the lines; at least one
   * @param terms assurance, wood, cost
   * @return the order
   * @throws IllegalArgumentException without a line, or if lines differ in their seasons
   */
  public static GraftOrder of(List<Ordered> ordered, OrderTerms terms) {
    if (ordered.isEmpty()) {
      throw new IllegalArgumentException(
          "an order needs at least one line: cultivar, rootstock (or any), trees");
    }
    int seasons = ordered.get(0).takes().seasons();
    if (ordered.stream().anyMatch(o -> o.takes().seasons() != seasons)) {
      throw new IllegalArgumentException("all lines must be given the same seasons");
    }
    List<Line> lines = new ArrayList<>();
    ordered.forEach(o -> lines.add(line(o, terms)));
    return new GraftOrder(lines, terms, seasons(ordered, lines));
  }

  private static List<Season> seasons(List<Ordered> ordered, List<Line> lines) {
    List<Season> seasons = new ArrayList<>();
    for (List<Integer> one : DueSeasons.of(ordered.stream().map(Ordered::line).toList())) {
      List<Line> own = one.stream().map(lines::get).toList();
      seasons.add(new Season(own, probabilityOfAll(one.stream().map(ordered::get).toList(), own)));
    }
    return seasons;
  }

  private static Line line(Ordered ordered, OrderTerms terms) {
    SeasonTakes takes = ordered.takes();
    int wanted = ordered.line().trees();
    double share = takes.expectedShare();
    OptionalInt grafts = GraftsNeeded.fewest(takes, wanted, terms.assurance());
    return new Line(
        ordered.line(),
        share,
        takes.shareRange(1 - 2 * BAD_SEASON),
        byRate(takes, wanted),
        grafts,
        map(grafts, terms.wood()::sticks),
        grafts.isPresent() ? Optional.of(trees(takes, grafts.getAsInt())) : Optional.empty(),
        grafts.isPresent() && terms.costPerGraft().isPresent()
            ? OptionalDouble.of(grafts.getAsInt() * terms.costPerGraft().getAsDouble())
            : OptionalDouble.empty());
  }

  private static Optional<ByRate> byRate(SeasonTakes takes, int wanted) {
    double grafts = Math.ceil(wanted / takes.expectedShare() - 1e-9);
    if (grafts > GraftsNeeded.MOST) {
      return Optional.empty();
    }
    int made = (int) grafts;
    int missing = Math.max(0, wanted - takes.assuredTrees(made, 1 - BAD_SEASON));
    return Optional.of(
        new ByRate(made, takes.probabilityOfAtLeast(wanted, made), (double) missing / wanted));
  }

  private static OptionalInt map(OptionalInt grafts, java.util.function.IntUnaryOperator sticks) {
    return grafts.isPresent()
        ? OptionalInt.of(sticks.applyAsInt(grafts.getAsInt()))
        : OptionalInt.empty();
  }

  /**
   * Trees to expect of a fixed number of grafts.
   *
   * @param takes what is known of them
   * @param grafts grafts made, 0 or more
   * @return trees
   */
  public static TreeRange trees(LotTakes takes, int grafts) {
    return new TreeRange(
        takes.assuredTrees(grafts, 1 - BAD_SEASON),
        grafts * takes.expectedShare(),
        takes.assuredTrees(grafts, BAD_SEASON));
  }

  /** Mean over seasons of the product over lines: within a season lines have their own luck. */
  private static OptionalDouble probabilityOfAll(List<Ordered> ordered, List<Line> lines) {
    if (lines.stream().anyMatch(line -> line.grafts().isEmpty())) {
      return OptionalDouble.empty();
    }
    double[] all = new double[ordered.get(0).takes().seasons()];
    Arrays.fill(all, 1);
    for (int i = 0; i < lines.size(); i++) {
      Line line = lines.get(i);
      double[] own =
          ordered.get(i).takes().probabilities(line.line().trees(), line.grafts().getAsInt());
      Arrays.setAll(all, d -> all[d] * own[d]);
    }
    return Arrays.stream(all).average();
  }

  /**
   * The line that would leave most customers waiting in a bad season if grafts were made by the
   * rate.
   *
   * @return the line, which has a number by the rate; empty if none would be short
   */
  public Optional<Line> riskiest() {
    return lines.stream()
        .filter(line -> shortByRate(line) > 0)
        .max(Comparator.comparingDouble(GraftOrder::shortByRate));
  }

  private static double shortByRate(Line line) {
    return line.byRate().map(ByRate::shortInBadSeason).orElse(0.0);
  }

  /**
   * Lines for which there is a number of grafts.
   *
   * @return in the order of the book
   */
  public List<Line> answered() {
    return lines.stream().filter(line -> line.grafts().isPresent()).toList();
  }

  /**
   * Lines for which {@value GraftsNeeded#MOST} grafts aren't enough.
   *
   * @return in the order of the book
   */
  public List<Line> unanswered() {
    return lines.stream().filter(line -> line.grafts().isEmpty()).toList();
  }

  /**
   * Trees wanted, also of lines that can't be had.
   *
   * @return sum over lines
   */
  public long treesWanted() {
    return trees(lines);
  }

  /**
   * Trees that there are grafts for.
   *
   * @return sum over lines that can be had
   */
  public long treesAnswered() {
    return trees(answered());
  }

  private static long trees(List<Line> some) {
    return some.stream().mapToLong(line -> line.line().trees()).sum();
  }

  /**
   * Grafts to make.
   *
   * @return sum over lines that can be had
   */
  public long graftsNeeded() {
    return grafts(lines);
  }

  /**
   * Sticks to cut.
   *
   * @return sum over lines that can be had
   */
  public long sticksNeeded() {
    return sticks(lines);
  }

  private static long grafts(List<Line> some) {
    return some.stream().mapToLong(line -> line.grafts().orElse(0)).sum();
  }

  private static long sticks(List<Line> some) {
    return some.stream().mapToLong(line -> line.sticks().orElse(0)).sum();
  }

  /**
   * Chance that every line has its trees, where all are grafted in one season.
   *
   * @return 0 to 1; empty if some line can't be had, or lines belong to several seasons
   */
  public OptionalDouble probabilityOfAll() {
    return seasons.size() == 1 ? seasons.get(0).probabilityOfAll() : OptionalDouble.empty();
  }

  /**
   * Lines due before a day.
   *
   * @param today the day
   * @return in the order of the book
   */
  public List<Line> passed(LocalDate today) {
    return lines.stream()
        .filter(line -> line.line().due().filter(due -> due.isBefore(today)).isPresent())
        .toList();
  }
}
