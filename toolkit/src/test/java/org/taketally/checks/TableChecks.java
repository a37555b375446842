package org.taketally.checks;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.taketally.answers.counts.ChiSquare;
import org.taketally.answers.counts.Stratum;
import org.taketally.answers.counts.TakeCount;
import org.taketally.answers.counts.TakeDifference;
import org.taketally.answers.counts.ThreeWayTable;
import org.taketally.answers.counts.TwoWayTable;
import org.taketally.terms.Interval;

/** Counted shares and chi-squares: plum cuttings, hickories, walnuts, Allanblackia. */
final class TableChecks implements CheckSource {

  private static final String ROUGH =
      "R's loglin stops when totals agree to 0.1 of a plant; with eps = 1e-12 it gives 2.29383931,"
          + " 2.27047895 and 161.09614027, as we do";

  @Override
  public void addTo(PublishedChecks checks) {
    addPlums(checks);
    addHickories1923(checks);
    addHickories1924(checks);
    addPersistence(checks);
    addWalnuts(checks);
    addAllanblackia(checks);
  }

  private static void addPlums(PublishedChecks checks) {
    String example = "plum_cuttings";
    ThreeWayTable plums = plums();
    ThreeWayTable.Fit alike = plums.noThreeWay();
    ThreeWayTable.Fit apart = plums.mutualIndependence();
    checks
        .check(example, "LR chi2 no three-way association (1 df)")
        .ours(() -> new double[] {alike.likelihoodRatio().statistic()})
        .within(2e-6, ROUGH)
        .referenceWithin(2e-6, "the same");
    checks
        .check(example, "Pearson chi2 no three-way association (1 df)")
        .ours(() -> new double[] {alike.pearson().statistic()})
        .referenceWithin(2e-4, ROUGH);
    checks
        .check(example, "fitted alive|now,long under no interaction")
        .ours(() -> new double[] {alike.expected()[0][0][0]})
        .referenceWithin(0.01, ROUGH);
    add(checks, example, "LR chi2 mutual independence (4 df)", apart.likelihoodRatio().statistic());
    add(checks, example, "Pearson chi2 mutual independence (4 df)", apart.pearson().statistic());
    for (String length : List.of("long", "short")) {
      TakeCount now = plums("now", length);
      TakeCount spring = plums("spring", length);
      TwoWayTable table = TwoWayTable.ofTakes(List.of(now, spring));
      add(checks, example, "Pearson chi2 status x time, " + length, table.pearson().statistic());
      add(checks, example, "LR chi2 status x time, " + length, table.likelihoodRatio().statistic());
      add(
          checks,
          example,
          "log odds ratio " + length,
          Math.log(new Stratum(length, now, spring).oddsRatio()));
    }
  }

  private static TakeCount plums(String time, String length) {
    return CheckData.rows("plum_cuttings.csv").stream()
        .filter(row -> row.getField("time").equals(time) && row.getField("length").equals(length))
        .map(row -> new TakeCount(CheckData.whole(row, "alive"), CheckData.whole(row, "planted")))
        .findFirst()
        .orElseThrow();
  }

  private static ThreeWayTable plums() {
    return ThreeWayTable.of(
        Stream.of("now", "spring")
            .map(
                time ->
                    Stream.of("long", "short")
                        .map(length -> plums(time, length))
                        .map(count -> new long[] {count.takes(), count.failures()})
                        .toArray(long[][]::new))
            .toArray(long[][][]::new));
  }

  private static void addHickories1923(PublishedChecks checks) {
    String example = "graft_hickory_bixby_1923";
    Map<String, TakeCount> byStock = counts(example, "stock", "grafts_set", "catches");
    byStock.forEach((stock, count) -> addShare(checks, example, stock, count));
    addShare(checks, example, "all", sum(byStock.values()));
    Map<String, TakeCount> byVariety = counts(example, "variety", "grafts_set", "catches");
    for (String variety : List.of("Barnes", "Brooks", "Fairbanks", "Hales", "Manahan", "Taylor")) {
      addPercent(checks, example, variety + " catches/grafts; %", byVariety.get(variety));
    }
    add(
        checks,
        example,
        "stock chi2 (4 df) ignoring variety",
        TwoWayTable.ofTakes(List.copyOf(byStock.values())).pearson().statistic());
  }

  private static void addHickories1924(PublishedChecks checks) {
    String example = "graft_hickory_bixby_1924";
    Map<String, TakeCount> byStock = counts(example, "stock", "grafts_set", "catches");
    byStock.forEach((stock, count) -> addShare(checks, example, stock, count));
    addShare(checks, example, "all", sum(byStock.values()));
    addPercent(
        checks,
        example,
        "Vest all stocks",
        counts(example, "variety", "grafts_set", "catches").get("Vest"));
  }

  /** Takes, grafts and percentage of one stock; a printed percentage known to be wrong is left. */
  private static void addShare(
      PublishedChecks checks, String example, String stock, TakeCount count) {
    Check check = checks.check(example, stock + " catches/grafts; %");
    check.ours(() -> new double[] {count.takes(), count.grafts(), percent(count)});
    correctPercent(check, count);
  }

  /** The same where the other program's value is the percentage alone. */
  private static void addPercent(
      PublishedChecks checks, String example, String quantity, TakeCount count) {
    Check check = checks.check(example, quantity);
    check.ours(() -> new double[] {count.takes(), count.grafts(), percent(count)});
    correctPercent(check, count);
    check.referenceReadAs(
        "%d/%d; %s".formatted(count.takes(), count.grafts(), check.answer().reference()));
  }

  /** Some printed percentages don't follow from the counts printed beside them. */
  private static void correctPercent(Check check, TakeCount count) {
    if (check.answer().published().contains("[wrong]")) {
      check.readAs(
          "%d/%d; %s".formatted(count.takes(), count.grafts(), Printed.text(percent(count), 1)),
          "the printed percentage does not follow from the printed counts");
    }
  }

  private static void addPersistence(PublishedChecks checks) {
    String example = "graft_hickory_persistence_1923_1924";
    counts(example, "stock", "caught_1923", "growing_aug_1924")
        .forEach(
            (stock, count) ->
                checks
                    .check(example, stock + " 1923 catches still growing 21 Aug 1924")
                    .ours(() -> new double[] {count.takes(), count.grafts()})
                    .referenceReadAs("")
                    .remark("share still growing " + Printed.text(count.rate(), 4)));
  }

  private static void addWalnuts(PublishedChecks checks) {
    String example = "graft_walnut_bixby_1923";
    Map<String, TakeCount> byScion =
        counts(example, "scion_variety", "grafts_set", "catches_inferred");
    TakeCount old = sum(walnuts(true));
    TakeCount young = sum(walnuts(false));
    addInferred(checks, "old-tree scions on black walnut (31) %", old);
    addInferred(checks, "young-tree scions on black walnut (174) %", young);
    addInferred(checks, "Thomas (23) %", byScion.get("Thomas black walnut")).referenceReadAs("100");
    addInferred(checks, "Ten Eyck (32) %", byScion.get("Ten Eyck black walnut"))
        .within(0.15, "31 of 32 is 96.88, printed rounded up to a whole percentage");
    addInferred(checks, "Persian on Persian (46) %", byScion.get("Persian walnut (4 varieties)"))
        .referenceReadAs("0");
    addInferred(checks, "Aiken butternut on butternut (39) %", byScion.get("Aiken butternut"));
    addInferred(
        checks, "Lancaster heartnut on Japan walnut (53) %", byScion.get("Lancaster heartnut"));
    addInferred(checks, "Stabler (85) %", byScion.get("Stabler black walnut"))
        .referenceReadAs("50.59")
        .within(0.7, "no whole number of 85 gives 51.2; 43 follows from the subtotal");
    checks
        .check(example, "young v old scion source chi2 uncorrected; Newcombe etc.")
        .ours(
            () -> {
              Interval plain = TakeDifference.wald(young, old, 0.95);
              return new double[] {
                TwoWayTable.ofTakes(List.of(young, old)).pearson().statistic(),
                plain.low(),
                plain.high()
              };
            });
  }

  /** The other program's text reads "takes/grafts=percent". */
  private static Check addInferred(PublishedChecks checks, String quantity, TakeCount count) {
    Check check = checks.check("graft_walnut_bixby_1923", quantity);
    String reference = check.answer().reference();
    return check
        .ours(() -> new double[] {percent(count)})
        .referenceReadAs(reference.substring(reference.indexOf('=') + 1));
  }

  private static List<TakeCount> walnuts(boolean old) {
    return CheckData.rows("graft_walnut_bixby_1923.csv").stream()
        .filter(row -> row.getField("stock").equals("black walnut"))
        .filter(row -> row.getField("scion_source").startsWith("old") == old)
        .map(row -> count(row, "grafts_set", "catches_inferred"))
        .toList();
  }

  private static void addAllanblackia(PublishedChecks checks) {
    String example = "graft_allanblackia_asaah_2011";
    List<NamedCsvRecord> rows = CheckData.rows(example + ".csv");
    List<String> quantities =
        List.of(
            "side tongue % (SE)",
            "side veneer", "top cleft", "whip and tongue", "side tongue, evergreen shade, plastic");
    for (int i = 0; i < quantities.size(); i++) {
      TakeCount count = count(rows.get(i), "n_inferred", "successes_inferred");
      Check check = checks.check(example, quantities.get(i));
      String reference = check.answer().reference();
      check
          .ours(() -> new double[] {percent(count), 100 * count.standardError()})
          .referenceReadAs(reference.substring(reference.indexOf(':')));
    }
    List<TakeCount> nursery =
        rows.subList(0, 4).stream()
            .map(row -> count(row, "n_inferred", "successes_inferred"))
            .toList();
    addAllanblackiaTests(checks, example, nursery);
  }

  private static void addAllanblackiaTests(
      PublishedChecks checks, String example, List<TakeCount> nursery) {
    TakeCount side = nursery.get(0);
    checks
        .check(example, "author: side tongue significantly better than the other three")
        .readAs(
            "0.0093, 0.0170, 0.0049, 0.0172, 0.0307, 0.0093",
            "the source says so in words; R's chances by chi-square and by Fisher's test")
        .referenceReadAs("")
        .ours(
            () ->
                Stream.concat(
                        nursery.stream()
                            .skip(1)
                            .map(other -> TwoWayTable.ofTakes(List.of(side, other)))
                            .map(table -> table.pearson().pValue()),
                        nursery.stream().skip(1).map(other -> TwoWayTable.fisher(side, other)))
                    .mapToDouble(Double::doubleValue)
                    .toArray());
    checks
        .check(example, "4-method chi2 (3 df); p")
        .ours(
            () -> {
              ChiSquare test = TwoWayTable.ofTakes(nursery).pearson();
              return new double[] {test.statistic(), test.pValue()};
            });
  }

  private static void add(PublishedChecks checks, String example, String quantity, double ours) {
    checks.check(example, quantity).ours(() -> new double[] {ours});
  }

  private static double percent(TakeCount count) {
    return 100 * count.rate();
  }

  private static TakeCount count(NamedCsvRecord row, String grafts, String takes) {
    return new TakeCount(CheckData.whole(row, takes), CheckData.whole(row, grafts));
  }

  private static Map<String, TakeCount> counts(
      String file, String column, String grafts, String takes) {
    Map<String, TakeCount> counts = new TreeMap<>();
    for (NamedCsvRecord row : CheckData.rows(file + ".csv")) {
      counts.merge(
          row.getField(column), count(row, grafts, takes), (a, b) -> sum(Arrays.asList(a, b)));
    }
    return counts;
  }

  private static TakeCount sum(Collection<TakeCount> counts) {
    return new TakeCount(
        counts.stream().mapToLong(TakeCount::takes).sum(),
        counts.stream().mapToLong(TakeCount::grafts).sum());
  }
}
