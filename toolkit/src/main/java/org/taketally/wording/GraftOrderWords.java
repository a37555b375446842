package org.taketally.wording;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.taketally.plan.order.ForecastOrder.Unknown;
import org.taketally.plan.order.GraftOrder;
import org.taketally.plan.order.GraftOrder.ByRate;
import org.taketally.plan.order.GraftOrder.Line;
import org.taketally.plan.order.GraftOrder.Season;
import org.taketally.plan.order.GraftsNeeded;
import org.taketally.plan.order.OrderLine;

/** An order in words. */
public final class GraftOrderWords {

  /** Grafts of a line that can't be had as surely as asked for. */
  public static final String TOO_MANY = "over " + Words.count(GraftsNeeded.MOST);

  /** Lines without an answer named one by one in a sentence. */
  private static final int MOST_NAMED = 4;

  private static final int FINEST = 10_000;

  private final GraftOrder order;

  private GraftOrderWords(GraftOrder order) {
    this.order = order;
  }

  /**
   * The words for an order.
   *
   * @param order grafts and sticks line by line
   * @return the words
   */
  public static GraftOrderWords of(GraftOrder order) {
    return new GraftOrderWords(order);
  }

  /**
   * What to make and cut, and which lines have no answer.
   *
   * @return one sentence or a few
   */
  public String headline() {
    List<String> without = order.unanswered().stream().map(line -> name(line.line())).toList();
    String sure = seasons(order.terms().assurance());
    if (order.answered().isEmpty()) {
      return "No line has an answer: to have its trees in %s, %s.".formatted(sure, tooMany());
    }
    if (without.isEmpty()) {
      return "For %s, then each line has its trees in %s.%s%s"
          .formatted(toMake(), sure, costs(), bySeason());
    }
    boolean one = order.answered().size() == 1;
    return "%d of %s an answer. For %s %s, then %s trees in %s.%s %s none: %s.%s"
        .formatted(
            order.answered().size(),
            Words.count(order.lines().size(), "line") + (one ? " has" : " have"),
            one ? "its" : "their",
            toMake(),
            one ? "it has its" : "each of them has its",
            sure,
            costs(),
            Words.first(without, MOST_NAMED) + (without.size() == 1 ? " has" : " have"),
            tooMany(),
            bySeason());
  }

  /** What each season of grafting needs, where there are several. */
  private String bySeason() {
    return order.seasons().size() < 2
        ? ""
        : " That is for %d seasons of grafting: %s."
            .formatted(
                order.seasons().size(),
                order.seasons().stream()
                    .map(
                        season ->
                            "%s from %s for what is %s"
                                .formatted(
                                    Words.count(season.graftsNeeded(), "graft"),
                                    Words.count(season.sticksNeeded(), "stick"),
                                    due(season)))
                    .collect(Collectors.joining("; ")));
  }

  /** When lines of a season are due: a day or two, and those that don't say. */
  private static String due(Season season) {
    String from = season.from().map(Object::toString).orElse("");
    String to = season.to().map(Object::toString).orElse("");
    return (from.equals(to) ? "due " + from : "due from %s to %s".formatted(from, to))
        + (undated(season.lines()) ? " or without a day" : "");
  }

  private String toMake() {
    return "%s: make %s from %s"
        .formatted(
            Words.count(order.treesAnswered(), "saleable tree"),
            Words.count(order.graftsNeeded(), "graft"),
            Words.count(order.sticksNeeded(), "stick"));
  }

  private String tooMany() {
    return "%s would need more than %s, if any number is enough"
        .formatted(
            order.unanswered().size() == 1 ? "it" : "each",
            Words.count(GraftsNeeded.MOST, "graft"));
  }

  private String costs() {
    return cost().map(money -> " The grafts cost %s.".formatted(money)).orElse("");
  }

  /**
   * A chance that was stated, as seasons.
   *
   * @param chance 0 to 1
   * @return e.g. {@code 9 seasons of 10}, {@code 995 seasons of 1,000}
   */
  public static String seasons(double chance) {
    int of = 10;
    while (of < FINEST && Math.abs(chance * of - Math.rint(chance * of)) > 1e-9 * of) {
      of *= 10;
    }
    return Words.count(Math.round(chance * of), "season") + " of " + Words.count(of);
  }

  /** A chance that was worked out, as seasons. */
  private static String aboutSeasons(double chance) {
    long ofHundred = Math.round(100 * chance);
    return ofHundred > 99
        ? "over 99 seasons of 100"
        : ofHundred < 1 ? "under 1 season of 100" : "about " + seasons(ofHundred / 100.0);
  }

  private Optional<String> cost() {
    if (order.terms().costPerGraft().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(money(order.graftsNeeded() * order.terms().costPerGraft().getAsDouble()));
  }

  private static String money(double amount) {
    return String.format(Locale.ROOT, "%,.2f", amount);
  }

  /**
   * What to mind.
   *
   * @return a paragraph each
   */
  public List<String> more() {
    List<String> more = new ArrayList<>();
    order
        .unanswered()
        .forEach(
            line ->
                more.add(
                    "%s: %s aren't enough to be as sure as that; promise fewer trees, or be content with a lower chance."
                        .formatted(name(line.line()), Words.count(GraftsNeeded.MOST, "graft"))));
    if (order.seasons().size() > 1) {
      more.add(
          "Lines due %s or more after the first are reckoned as grafted in a later season. Cut their wood then: it doesn't keep so long. Sticks there are count for the lines of one season alone.%s"
              .formatted(
                  Words.count(GraftOrder.Season.MONTHS, "month"),
                  undated(order.lines())
                      ? " Lines without a day due are reckoned with those due first."
                      : ""));
    }
    order.seasons().forEach(season -> together(season).ifPresent(more::add));
    byRate().ifPresent(more::add);
    order.riskiest().ifPresent(line -> more.add(risk(line, line.byRate().orElseThrow())));
    more.add(
        "Grafts are counted until the tree is saleable as far as a late loss was stated. Check that"
            + " you may multiply a protected cultivar before you order or cut wood.");
    return more;
  }

  private static boolean undated(List<Line> lines) {
    return lines.stream().anyMatch(line -> line.line().due().isEmpty());
  }

  /** How often the lines of a season are complete; nothing of a line alone. */
  private Optional<String> together(Season season) {
    int lines = season.lines().size();
    if (season.probabilityOfAll().isEmpty() || lines == 1) {
      return Optional.empty();
    }
    return Optional.of(
        "%s lines%s together, grafted in one season, are complete in %s, as a bad season is bad for all of them."
            .formatted(
                lines == 2 ? "Both" : "All " + lines,
                order.seasons().size() == 1 ? "" : " " + due(season),
                aboutSeasons(season.probabilityOfAll().getAsDouble())));
  }

  /**
   * Lines due on a day that has passed.
   *
   * @param today the day the plan is made
   * @return two sentences; empty if there is no such line
   */
  public Optional<String> passed(LocalDate today) {
    List<Line> passed = order.passed(today);
    if (passed.isEmpty()) {
      return Optional.empty();
    }
    List<String> names =
        passed.stream()
            .map(line -> "%s (%s)".formatted(name(line.line()), line.line().due().orElseThrow()))
            .toList();
    return Optional.of(
        "Due on a day that has passed on %s: %s. What is grafted from now on comes too late for %s; correct the day, or agree on a later one."
            .formatted(today, Words.first(names, MOST_NAMED), passed.size() == 1 ? "it" : "them"));
  }

  /**
   * Lines that stand in the book more than once, each counted as often.
   *
   * @return a sentence each
   */
  public List<String> repeated() {
    Map<List<Object>, List<OrderLine>> alike = new LinkedHashMap<>();
    for (Line line : order.lines()) {
      OrderLine one = line.line();
      alike
          .computeIfAbsent(
              List.of(
                  one.plainCultivar(),
                  one.rootstock().map(s -> s.toLowerCase(Locale.ROOT)),
                  one.trees(),
                  one.due()),
              k -> new ArrayList<>())
          .add(one);
    }
    return alike.values().stream()
        .filter(lines -> lines.size() > 1)
        .map(
            lines ->
                "%s (%s%s) stands in the book %s and is counted as often; if it is one order, delete %s."
                    .formatted(
                        name(lines.get(0)),
                        Words.count(lines.get(0).trees(), "tree"),
                        lines.get(0).due().map(" due %s"::formatted).orElse(""),
                        lines.size() == 2 ? "twice" : Words.count(lines.size()) + " times",
                        lines.size() == 2 ? "the other line" : "the other lines"))
        .toList();
  }

  /** Nothing where no line has a number by the rate. */
  private Optional<String> byRate() {
    List<ByRate> made = order.lines().stream().flatMap(line -> line.byRate().stream()).toList();
    if (made.isEmpty()) {
      return Optional.empty();
    }
    List<String> without =
        order.lines().stream()
            .filter(line -> line.byRate().isEmpty())
            .map(line -> name(line.line()))
            .toList();
    double worst = made.stream().mapToDouble(ByRate::probability).min().orElseThrow();
    double best = made.stream().mapToDouble(ByRate::probability).max().orElseThrow();
    String least = Words.chance(worst);
    String most = Words.chance(best);
    return Optional.of(
        "Trees divided by the take (%s in all%s) would be enough with a chance of %s%s."
            .formatted(
                Words.count(made.stream().mapToLong(ByRate::grafts).sum(), "graft"),
                without.isEmpty()
                    ? ""
                    : ", %s left out".formatted(Words.first(without, MOST_NAMED)),
                least.equals(most) ? least : "%s to %s".formatted(least, most),
                best < order.terms().assurance() ? " only" : ""));
  }

  private static String risk(Line line, ByRate made) {
    return "The riskiest line is %s: made by the rate (%s), it would be short of %s of its trees in the worst season of ten."
        .formatted(
            name(line.line()),
            Words.count(made.grafts(), "graft"),
            Words.percent(made.shortInBadSeason()));
  }

  /**
   * A line's name.
   *
   * @param line of the book
   * @return e.g. {@code Orrin on Halden seedling}
   */
  public static String name(OrderLine line) {
    return line.cultivar() + line.rootstock().map(stock -> " on " + stock).orElse("");
  }

  /**
   * Headings of {@link #table}.
   *
   * @return one a column
   */
  public List<String> headings() {
    List<String> headings =
        new ArrayList<>(
            List.of(
                "Line",
                "Due",
                "Trees wanted",
                "Saleable of the grafts",
                "Grafts to make",
                "Sticks to cut",
                "Trees to expect"));
    if (order.terms().costPerGraft().isPresent()) {
      headings.add("Cost");
    }
    return headings;
  }

  /**
   * One row a line, and the total.
   *
   * @return texts
   */
  public List<List<String>> table() {
    List<List<String>> rows = new ArrayList<>();
    order.lines().forEach(line -> rows.add(row(line)));
    List<String> total =
        new ArrayList<>(
            List.of(
                order.unanswered().isEmpty() ? "All" : "All with an answer",
                "",
                Words.count(order.treesAnswered()),
                "",
                Words.count(order.graftsNeeded()),
                Words.count(order.sticksNeeded()),
                ""));
    cost().ifPresent(total::add);
    rows.add(total);
    return rows;
  }

  private List<String> row(Line line) {
    List<String> row =
        new ArrayList<>(
            List.of(
                name(line.line()),
                line.line().due().map(Object::toString).orElse(""),
                Words.count(line.line().trees()),
                "%s (%s)"
                    .formatted(Words.aboutChance(line.share()), Words.percents(line.shareRange())),
                line.grafts().isPresent() ? Words.count(line.grafts().getAsInt()) : TOO_MANY,
                line.sticks().isPresent() ? Words.count(line.sticks().getAsInt()) : "–",
                line.trees().map(GraftOrderWords::range).orElse("–")));
    if (order.terms().costPerGraft().isPresent()) {
      row.add(line.cost().isPresent() ? money(line.cost().getAsDouble()) : "–");
    }
    return row;
  }

  private static String range(GraftOrder.TreeRange trees) {
    return "%s (%s to %s)"
        .formatted(
            Words.count(Math.round(trees.expected())),
            Words.count(trees.low()),
            Words.count(trees.high()));
  }

  /**
   * That nothing is recorded of a cultivar or stock.
   *
   * @param unknown its name, and one it may be meant for
   * @return two sentences or three
   */
  public static String unknown(Unknown unknown) {
    return "There are no records of %s: what it may do is taken from how far others differ, so its line needs many grafts to be sure.%s"
        .formatted(
            unknown.name(),
            unknown
                .like()
                .map(like -> " Did you mean %s? Then write it so in the book.".formatted(like))
                .orElse(" A spelling other than that of the records would look the same."));
  }
}
