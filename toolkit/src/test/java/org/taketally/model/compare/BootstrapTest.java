package org.taketally.model.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.LevelTest;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.model.UnpooledLevels;
import org.taketally.terms.Provenance;

/** Tests where the compared column changes between a few groups only. */
class BootstrapTest {

  /** Beds of one stock each, 30 grafts a bed, stocks alike unless {@code gap} says otherwise. */
  private static Cells beds(long seed, int beds, double gap) {
    SplittableRandom random = new SplittableRandom(seed);
    int[] bed = IntStream.range(0, beds).toArray();
    int[] stock = IntStream.range(0, beds).map(b -> b % 2).toArray();
    int[] grafts = IntStream.range(0, beds).map(b -> 30).toArray();
    int[] takes = new int[beds];
    for (int b = 0; b < beds; b++) {
      double eta = 0.5 + gap * stock[b] + 0.5 * random.nextGaussian();
      for (int n = 0; n < 30; n++) {
        takes[b] += random.nextDouble() < 1 / (1 + Math.exp(-eta)) ? 1 : 0;
      }
    }
    return new Cells(
        List.of(
            new Factor("rootstock", List.of("R1", "R2"), stock),
            new Factor("bed", IntStream.range(0, beds).mapToObj(b -> "B" + b).toList(), bed)),
        List.of(),
        grafts,
        takes,
        0,
        Provenance.of("simulated", beds));
  }

  private static TakeFit[] fits(Cells cells) {
    TakeModel smaller = TakeModel.ofTakes().varyBy("bed");
    return new TakeFit[] {smaller.fit(cells), smaller.compare("rootstock").fit(cells)};
  }

  @Test
  void stops_where_it_has_seen_enough_and_says_how_sure_it_is() {
    TakeFit[] fits = fits(beds(1, 8, 0));
    Bootstrap.Comparison all = Bootstrap.of(2).withReplicates(400).compare(fits[0], fits[1]);
    Bootstrap.Comparison early =
        Bootstrap.of(2).withReplicates(400).withStopAfter(20).compare(fits[0], fits[1]);
    assertThat(all.simulated()).isEqualTo(400);
    assertThat(early.simulated()).isLessThan(all.simulated());
    assertThat(early.atLeast()).isGreaterThanOrEqualTo(20);
    assertThat(early.pValue())
        .isCloseTo(all.pValue(), within(4 * (early.standardError() + all.standardError())));
    assertThat(all.standardError())
        .isCloseTo(Math.sqrt(all.pValue() * (1 - all.pValue()) / 400), within(0.001));
  }

  @Test
  void goes_on_while_the_limit_is_within_its_error() {
    TakeFit[] fits = fits(beds(1, 8, 0));
    Bootstrap bootstrap = Bootstrap.of(2).withReplicates(300);
    Bootstrap.Comparison clear = bootstrap.withStopOnceClearOf(0.001).compare(fits[0], fits[1]);
    assertThat(clear.simulated()).isLessThan(300);
    assertThat(clear.settles(0.001)).isTrue();
    Bootstrap.Comparison close =
        bootstrap.withStopOnceClearOf(clear.pValue()).compare(fits[0], fits[1]);
    assertThat(close.simulated()).isEqualTo(300);
    assertThat(close.settles(close.pValue())).isFalse();
  }

  /** Six beds of alike stocks: F by beds keeps its 10 %, chi-square cries wolf. */
  @Test
  void f_by_groups_keeps_its_error_with_few_beds() {
    int sets = 200;
    int chiSquare = 0;
    int byGroups = 0;
    for (int seed = 0; seed < sets; seed++) {
      TakeFit fit =
          TakeModel.ofTakes().varyBy("bed").compare("rootstock").fit(beds(1_000 + seed, 6, 0));
      assertThat(fit.groupDegrees("bed")).isEqualTo(4);
      LevelTest wald = UnpooledLevels.of(fit, "rootstock").orElseThrow().anyDifference();
      chiSquare += wald.pValue() < 0.1 ? 1 : 0;
      byGroups += wald.byGroups(4).pValue() < 0.1 ? 1 : 0;
    }
    assertThat(chiSquare).isGreaterThan(28);
    assertThat(byGroups).isLessThanOrEqualTo(28);
    assertThat(byGroups).isLessThan(chiSquare);
  }

  /** F(1, 4) at 4: R 4.2.2, pf(4, 1, 4, lower.tail = FALSE) = 0.1161165. */
  @Test
  void f_agrees_with_r() {
    assertThat(new LevelTest(4, 1, 0.0455).byGroups(4).pValue()).isCloseTo(0.1161165, within(1e-7));
  }
}
