package org.taketally.answers.counts;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.taketally.terms.Interval;

/**
 * How often each 95 % interval holds the truth, worked out exactly by adding up the chances of all
 * counts, over takes from 5 to 95 %. The two tables of docs/intervals.md are these.
 */
class IntervalCoverageTest {

  private static final Path PAGE =
      Path.of(System.getProperty("taketally.root"), "docs", "intervals.md");
  private static final double LEVEL = 0.95;
  private static final int FROM = 5;
  private static final int TO = 95;

  private interface OneRate {
    Interval of(long takes, long grafts, double level);
  }

  private interface TwoRates {
    Interval of(TakeCount first, TakeCount second, double level);
  }

  /** Lowest and mean coverage, mean width. */
  private record Coverage(double lowest, double mean, double width) {
    String cells() {
      return String.format(
          Locale.ROOT, "%.1f %% | %.1f %% | %.1f points", 100 * lowest, 100 * mean, 100 * width);
    }
  }

  private static Coverage ofOne(OneRate method, int grafts) {
    Interval[] intervals = new Interval[grafts + 1];
    for (int x = 0; x <= grafts; x++) {
      intervals[x] = method.of(x, grafts, LEVEL);
    }
    double lowest = 1;
    double mean = 0;
    double width = 0;
    for (int percent = FROM; percent <= TO; percent++) {
      BinomialDistribution counts = BinomialDistribution.of(grafts, percent / 100.0);
      double covered = 0;
      for (int x = 0; x <= grafts; x++) {
        covered += intervals[x].contains(percent / 100.0) ? counts.probability(x) : 0;
        width += counts.probability(x) * intervals[x].width();
      }
      lowest = Math.min(lowest, covered);
      mean += covered;
    }
    int rates = TO - FROM + 1;
    return new Coverage(lowest, mean / rates, width / rates);
  }

  /** Two equal lots, all pairs of takes in steps of 5 points. */
  private static Coverage ofTwo(TwoRates method, int grafts) {
    Interval[][] intervals = new Interval[grafts + 1][grafts + 1];
    for (int x = 0; x <= grafts; x++) {
      for (int y = 0; y <= grafts; y++) {
        intervals[x][y] = method.of(new TakeCount(x, grafts), new TakeCount(y, grafts), LEVEL);
      }
    }
    double lowest = 1;
    double mean = 0;
    double width = 0;
    int pairs = 0;
    for (int first = FROM; first <= TO; first += 5) {
      double[] ofFirst = chances(grafts, first);
      for (int second = FROM; second <= TO; second += 5) {
        double[] ofSecond = chances(grafts, second);
        double covered = 0;
        for (int x = 0; x <= grafts; x++) {
          for (int y = 0; y <= grafts; y++) {
            double both = ofFirst[x] * ofSecond[y];
            covered += holds(intervals[x][y], (first - second) / 100.0) ? both : 0;
            width += both * intervals[x][y].width();
          }
        }
        lowest = Math.min(lowest, covered);
        mean += covered;
        pairs++;
      }
    }
    return new Coverage(lowest, mean / pairs, width / pairs);
  }

  private static double[] chances(int grafts, int percent) {
    BinomialDistribution counts = BinomialDistribution.of(grafts, percent / 100.0);
    return IntStream.rangeClosed(0, grafts).mapToDouble(counts::probability).toArray();
  }

  /** A true difference of 0 must not miss a limit of 0 by a rounding. */
  private static boolean holds(Interval interval, double truth) {
    return interval.low() <= truth + 1e-12 && truth - 1e-12 <= interval.high();
  }

  private static String oneRateTable() {
    Map<String, OneRate> methods = new LinkedHashMap<>();
    methods.put("Wilson", TakeRateInterval::wilson);
    methods.put("Wilson, continuity corrected", TakeRateInterval::wilsonWithContinuity);
    methods.put("Clopper-Pearson", TakeRateInterval::clopperPearson);
    methods.put("Jeffreys", TakeRateInterval::jeffreys);
    methods.put("Agresti-Coull", TakeRateInterval::agrestiCoull);
    methods.put("textbook (Wald)", TakeRateInterval::wald);
    StringBuilder table = new StringBuilder(HEAD);
    for (int grafts : new int[] {12, 40, 150}) {
      methods.forEach((name, method) -> append(table, grafts + "", name, ofOne(method, grafts)));
    }
    return table.toString();
  }

  private static String twoRatesTable() {
    Map<String, TwoRates> methods = new LinkedHashMap<>();
    methods.put("Newcombe", TakeDifference::newcombe);
    methods.put("Miettinen-Nurminen", TakeDifference::miettinenNurminen);
    methods.put("Mee", TakeDifference::mee);
    methods.put("skewness corrected", TakeDifference::skewnessCorrected);
    methods.put("Agresti-Caffo", TakeDifference::agrestiCaffo);
    methods.put("textbook (Wald)", TakeDifference::wald);
    StringBuilder table = new StringBuilder(HEAD);
    for (int grafts : new int[] {12, 30}) {
      methods.forEach(
          (name, method) -> append(table, grafts + " and " + grafts, name, ofTwo(method, grafts)));
    }
    return table.toString();
  }

  private static final String HEAD =
      """
      | grafts | method | covers at worst | covers on average | mean width |
      |---|---|---|---|---|
      """;

  private static void append(StringBuilder table, String grafts, String name, Coverage coverage) {
    table.append("| %s | %s | %s |\n".formatted(grafts, name, coverage.cells()));
  }

  @Test
  void page_shows_the_coverage_worked_out_here() throws IOException {
    String page = Files.readString(PAGE);
    String shown =
        replaced(replaced(page, "one rate", oneRateTable()), "two rates", twoRatesTable());
    if ("write".equals(System.getProperty("golden"))) {
      Files.writeString(PAGE, shown);
    }
    assertThat(Files.readString(PAGE)).as("rewrite with -Dgolden=write").isEqualTo(shown);
  }

  private static String replaced(String page, String name, String table) {
    String from = "<!-- coverage, " + name + " -->\n";
    String to = "<!-- end of coverage, " + name + " -->";
    int start = page.indexOf(from) + from.length();
    return page.substring(0, start) + "\n" + table + "\n" + page.substring(page.indexOf(to));
  }

  /** What the page says in words. */
  @Test
  void wilson_covers_on_average_what_it_says_and_the_textbook_does_not() {
    Coverage wilson = ofOne(TakeRateInterval::wilson, 40);
    assertThat(wilson.mean()).isBetween(0.945, 0.96);
    assertThat(wilson.lowest()).isGreaterThan(0.90);
    assertThat(ofOne(TakeRateInterval::clopperPearson, 40).lowest()).isGreaterThan(LEVEL);
    assertThat(ofOne(TakeRateInterval::wald, 40).lowest()).isLessThan(0.90);
    Coverage newcombe = ofTwo(TakeDifference::newcombe, 12);
    assertThat(newcombe.mean()).isBetween(0.945, 0.975);
    assertThat(newcombe.lowest()).isGreaterThan(0.90);
    assertThat(ofTwo(TakeDifference::wald, 12).lowest()).isLessThan(0.90);
  }
}
