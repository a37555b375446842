package org.taketally.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.cells.Measure;
import org.taketally.model.compare.Bootstrap;
import org.taketally.model.numeric.ChiSquares;
import org.taketally.model.numeric.GaussHermite;
import org.taketally.terms.Provenance;

/** What a model refuses, leaves out, warns of, and how its parts fit together. */
class TakeModelTest {

  private static Cells cells(int[] grafts, int[] takes, Factor... factors) {
    return new Cells(
        List.of(factors), List.of(), grafts, takes, 0, Provenance.of("typed in", grafts.length));
  }

  private static Factor column(String name, String... texts) {
    return CheckData.factor(name, texts);
  }

  /** 24 cultivars, 6 rootstocks, 5 grafters; storage days 0 to 20; cultivars differ. */
  private static Cells nursery(long seed) {
    Random random = new Random(seed);
    int size = 600;
    int[][] codes = new int[3][size];
    int[] grafts = new int[size];
    int[] takes = new int[size];
    double[] days = new double[size];
    for (int i = 0; i < size; i++) {
      codes[0][i] = random.nextInt(24);
      codes[1][i] = random.nextInt(6);
      codes[2][i] = random.nextInt(5);
      days[i] = random.nextInt(21);
      grafts[i] = 1 + random.nextInt(5);
      double eta = 1 - 0.08 * days[i] + 0.07 * (codes[0][i] - 12);
      for (int n = 0; n < grafts[i]; n++) {
        takes[i] += random.nextDouble() < 1 / (1 + Math.exp(-eta)) ? 1 : 0;
      }
    }
    return new Cells(
        List.of(
            new Factor("cultivar", names("C", 24), codes[0]),
            new Factor("rootstock", names("R", 6), codes[1]),
            new Factor("grafter", names("G", 5), codes[2])),
        List.of(new Measure("storage_days", days)),
        grafts,
        takes,
        0,
        Provenance.of("simulated", size));
  }

  private static List<String> names(String prefix, int count) {
    return java.util.stream.IntStream.rangeClosed(1, count).mapToObj(i -> prefix + i).toList();
  }

  @Test
  void refuses_a_level_where_none_took() {
    Cells cells =
        cells(
            new int[] {10, 10, 10},
            new int[] {6, 0, 4},
            column("rootstock", "Halden seedling", "Corrin", "Maro"));
    assertThatThrownBy(() -> TakeModel.ofTakes().compare("rootstock").fit(cells))
        .isInstanceOfSatisfying(
            CannotFit.class,
            refusal -> {
              assertThat(refusal.reason()).isEqualTo(CannotFit.Reason.SEPARATED);
              assertThat(refusal.columns()).containsExactly("rootstock");
            })
        .hasMessage(
            "rootstock: Corrin (0 of 10 took): all or none took, so its effect has no finite"
                + " estimate; let rootstock vary instead of adjusting for it, or join the level"
                + " with another");
    TakeFit varying = TakeModel.ofTakes().varyBy("rootstock").fit(cells);
    assertThat(varying.varying("rootstock").levelEffect(1)).isBetween(-5.0, -0.5);
  }

  @Test
  void refuses_a_combination_that_splits_takes_from_failures() {
    int[] grafts = {5, 5, 5, 5, 5, 5};
    int[] takes = {0, 0, 2, 5, 5, 5};
    Cells cells =
        new Cells(
            List.of(),
            List.of(new Measure("storage_days", new double[] {1, 2, 3, 4, 5, 6})),
            grafts,
            takes,
            0,
            Provenance.of("typed in", 6));
    assertThatThrownBy(() -> TakeModel.ofTakes().adjustFor("storage_days").fit(cells))
        .isInstanceOf(CannotFit.class)
        .hasMessageStartingWith("storage_days, together with the other columns, splits takes");
  }

  @Test
  void refuses_a_column_nested_in_another() {
    Cells cells =
        cells(
            new int[] {10, 10, 10, 10},
            new int[] {6, 5, 4, 3},
            column("site", "Upper", "Upper", "Lower", "Lower"),
            column("block", "1", "2", "3", "4"));
    assertThatThrownBy(() -> TakeModel.ofTakes().adjustFor("site", "block").fit(cells))
        .isInstanceOfSatisfying(
            CannotFit.class,
            refusal -> assertThat(refusal.reason()).isEqualTo(CannotFit.Reason.ALIASED))
        .hasMessage(
            "block: 4 can't be told apart from site and block: whenever one changes in these"
                + " records, so does the other; leave block out, or let it vary");
  }

  @Test
  void refuses_records_without_failures_or_takes_or_cells() {
    Factor one = column("site", "Upper");
    assertThatThrownBy(() -> TakeModel.ofTakes().fit(cells(new int[] {7}, new int[] {7}, one)))
        .hasMessage(
            "all of the 7 grafts took, so nothing can be said about what moves take; check that"
                + " failures and takes are both recorded, or add records");
    assertThatThrownBy(() -> TakeModel.ofTakes().fit(cells(new int[] {7}, new int[] {0}, one)))
        .hasMessageStartingWith("none of the 7 grafts took");
    assertThatThrownBy(() -> TakeModel.ofTakes().fit(cells(new int[] {1}, new int[] {1}, one)))
        .hasMessageStartingWith("the only graft took, so nothing");
    assertThatThrownBy(() -> TakeModel.ofTakes().fit(cells(new int[0], new int[0], column("site"))))
        .hasMessage("there are no assessed grafts to learn from");
  }

  @Test
  void refuses_columns_that_are_not_there() {
    assertThatThrownBy(() -> TakeModel.ofTakes().adjustFor("moon").fit(nursery(1)))
        .hasMessage(
            "these records have no column \"moon\"; there are [cultivar, rootstock, grafter] and"
                + " [storage_days]");
    assertThatThrownBy(
            () -> TakeModel.ofTakes().varyBy("cultivar", "grafter").nodes(9).fit(nursery(1)))
        .hasMessageContaining("quadrature nodes need exactly one varying column, this model has 2");
  }

  @Test
  void leaves_out_and_counts_what_was_not_recorded() {
    Factor grafter = new Factor("grafter", List.of("A", "B"), new int[] {0, 1, Factor.MISSING, 1});
    Cells cells = cells(new int[] {9, 8, 7, 6}, new int[] {5, 4, 3, 2}, grafter);
    TakeFit fit = TakeModel.ofTakes().adjustFor("grafter").fit(cells);
    assertThat(fit.leftOut()).containsExactly(java.util.Map.entry("grafter", 7L));
    assertThat(fit.cells().graftsTotal()).isEqualTo(23);
    assertThat(fit.warnings().get(0).sentence())
        .isEqualTo(
            "7 of 30 grafts were left out because grafter wasn't recorded; record it, or leave the"
                + " column out");
  }

  @Test
  void leaves_out_a_column_with_one_level() {
    Cells cells = cells(new int[] {9, 8}, new int[] {5, 4}, column("site", "Upper", "Upper"));
    TakeFit fit = TakeModel.ofTakes().adjustFor("site").fit(cells);
    assertThat(fit.beta()).hasSize(1);
    assertThat(fit.beta()[0]).isCloseTo(Math.log(9.0 / 8.0), within(1e-10));
    assertThat(fit.warnings())
        .extracting(FitWarning::kind)
        .containsExactly(FitWarning.Kind.ONE_LEVEL);
  }

  /** How cells are split or joined can't matter: the log-likelihood is that of single grafts. */
  @Test
  void grouping_of_rows_does_not_matter() {
    Cells cells = nursery(3);
    TakeModel model =
        TakeModel.ofTakes().adjustForCurve("storage_days", 3).varyBy("cultivar", "pairing");
    TakeFit grouped = model.fit(cells);
    TakeFit single = model.fit(singles(cells));
    assertThat(single.logLikelihood()).isCloseTo(grouped.logLikelihood(), within(1e-8));
    assertThat(single.beta()).containsExactly(grouped.beta(), within(1e-6));
  }

  private static Cells singles(Cells cells) {
    int total = (int) cells.graftsTotal();
    int[] from = new int[total];
    int[] takes = new int[total];
    int at = 0;
    for (int i = 0; i < cells.size(); i++) {
      for (int n = 0; n < cells.grafts(i); n++) {
        from[at] = i;
        takes[at++] = n < cells.takes(i) ? 1 : 0;
      }
    }
    int[] ones = new int[total];
    Arrays.fill(ones, 1);
    return new Cells(
        cells.factors().stream()
            .map(
                f ->
                    new Factor(
                        f.name(), f.levels(), Arrays.stream(from).map(i -> f.code(i)).toArray()))
            .toList(),
        List.of(
            new Measure(
                "storage_days",
                Arrays.stream(from)
                    .mapToDouble(i -> cells.measure("storage_days").value(i))
                    .toArray())),
        ones,
        takes,
        0,
        Provenance.of("simulated", total));
  }

  @Test
  void design_gives_the_fixed_part_as_if() {
    Cells cells = nursery(4);
    TakeFit fit =
        TakeModel.ofTakes().adjustFor("grafter", "storage_days").varyBy("cultivar").fit(cells);
    double[] here = fit.design().fixedPart(fit.beta());
    double[] asG2 = fit.design().fixedPartWith("grafter", "G2", fit.beta());
    double[] fresh = fit.design().fixedPartWith("storage_days", 0, fit.beta());
    for (int i = 0; i < here.length; i++) {
      int grafter = cells.factor("grafter").code(i);
      double own = grafter == 0 ? 0 : fit.beta()[grafter];
      double days = cells.measure("storage_days").value(i);
      assertThat(asG2[i]).isCloseTo(here[i] - own + fit.beta()[1], within(1e-12));
      assertThat(fresh[i]).isCloseTo(here[i] - days * fit.beta()[5], within(1e-12));
    }
    assertThatThrownBy(() -> fit.design().fixedPartWith("grafter", "G9", fit.beta()))
        .hasMessage("no grafter \"G9\" in this fit; there are [G1, G2, G3, G4, G5]");
  }

  @Test
  void bootstrap_is_seeded_and_can_be_stopped() {
    TakeFit smaller = TakeModel.ofTakes().varyBy("cultivar").fit(nursery(5));
    TakeFit larger = TakeModel.ofTakes().varyBy("cultivar", "grafter").fit(nursery(5));
    Bootstrap bootstrap = Bootstrap.of(11).withReplicates(40);
    Bootstrap.Comparison first = bootstrap.compare(smaller, larger);
    assertThat(bootstrap.compare(smaller, larger)).isEqualTo(first);
    assertThat(first.simulated()).isEqualTo(40);
    assertThat(first.pValue()).isBetween(1 / 41.0, 1.0);
    assertThat(bootstrap.of(smaller)).hasSize(40).isEqualTo(bootstrap.of(smaller));
    Thread.currentThread().interrupt();
    assertThatThrownBy(() -> bootstrap.compare(smaller, larger))
        .isInstanceOf(CancellationException.class)
        .hasMessageStartingWith("the bootstrap was stopped after");
    assertThat(Thread.interrupted()).isTrue();
  }

  /** Mixture by hand: half no spread (a point at 0), half one degree of freedom. */
  @Test
  void a_spread_at_the_edge_halves_the_chance() {
    assertThat(ChiSquares.upperAtEdge(2.705543454095404, 0, 1)).isCloseTo(0.05, within(1e-12));
    assertThat(ChiSquares.upperAtEdge(0, 0, 1)).isCloseTo(1, within(1e-12));
    assertThat(ChiSquares.upperAtEdge(3.841458820694124, 1, 0)).isCloseTo(0.05, within(1e-12));
  }

  /** Exact values: the n-point rule integrates z^2 to 1 and z^4 to 3. */
  @Test
  void quadrature_rule_is_exact_for_polynomials() {
    for (int count = 3; count <= 100; count++) {
      GaussHermite rule = GaussHermite.of(count);
      double[] moments = new double[5];
      for (int m = 0; m < count; m++) {
        double z = rule.nodes()[m];
        double weight = Math.exp(rule.logWeights()[m] - z * z / 2);
        for (int power = 0; power <= 4; power++) {
          moments[power] += weight * Math.pow(z, power);
        }
      }
      assertThat(moments).containsExactly(new double[] {1, 0, 1, 0, 3}, within(1e-10));
    }
  }

  /**
   * Mostly fresh wood, so that the knots lie close together at the start: the curve's columns hang
   * together closely, while the curve itself is well known.
   */
  @Test
  void a_curve_over_mostly_fresh_wood_is_not_taken_for_a_perfect_split() {
    int[] grafts = {44, 29, 23, 27, 20, 13, 12, 11, 12, 6, 6, 4, 9};
    int[] takes = {23, 15, 14, 12, 10, 5, 5, 5, 8, 1, 3, 1, 5};
    double[] days = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12};
    int total = Arrays.stream(grafts).sum();
    int[] ones = new int[total];
    int[] taken = new int[total];
    double[] stored = new double[total];
    int at = 0;
    for (int d = 0; d < days.length; d++) {
      for (int graft = 0; graft < grafts[d]; graft++) {
        ones[at] = 1;
        taken[at] = graft < takes[d] ? 1 : 0;
        stored[at++] = days[d];
      }
    }
    Cells cells =
        new Cells(
            List.of(),
            List.of(new Measure("storage_days", stored)),
            ones,
            taken,
            0,
            Provenance.of("made up", total));
    TakeFit fit = TakeModel.ofTakes().adjustForCurve("storage_days", 3).fit(cells);
    assertThat(fit.logLikelihood()).isBetween(-0.7 * total, -0.6 * total);
  }
}
