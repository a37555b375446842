package org.taketally.publish.privacy;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Sums of groups a, b and c: what follows from them by adding and subtracting. */
class ModularBasisTest {

  private static ModularBasis of(long[]... sums) {
    ModularBasis basis = new ModularBasis();
    for (long[] sum : sums) {
      basis.add(sum);
    }
    return basis;
  }

  @Test
  void three_groups_summed_in_pairs_are_each_known() {
    ModularBasis pairs = of(new long[] {1, 1, 0}, new long[] {0, 1, 1}, new long[] {1, 0, 1});

    assertThat(pairs.rank()).isEqualTo(3);
    assertThat(pairs.spans(new long[] {1, 0, 0})).isTrue();
    assertThat(pairs.spans(new long[] {0, 1, 0})).isTrue();
    assertThat(pairs.spans(new long[] {0, 0, 1})).isTrue();
  }

  @Test
  void two_sums_of_pairs_tell_their_difference_and_no_group() {
    ModularBasis pairs = of(new long[] {1, 1, 0}, new long[] {0, 1, 1});

    assertThat(pairs.spans(new long[] {1, 0, ModularBasis.PRIME - 1})).isTrue();
    assertThat(pairs.spans(new long[] {1, 0, 0})).isFalse();
    assertThat(pairs.spans(new long[] {0, 1, 0})).isFalse();
    assertThat(pairs.spans(new long[] {0, 0, 1})).isFalse();
  }

  @Test
  void nothing_published_tells_nothing_but_nothing() {
    ModularBasis nothing = of();

    assertThat(nothing.rank()).isZero();
    assertThat(nothing.spans(new long[] {1, 0})).isFalse();
    assertThat(nothing.spans(new long[] {0, 0})).isTrue();
  }

  @Test
  void a_sum_that_follows_from_others_adds_nothing() {
    ModularBasis basis = of(new long[] {1, 1, 0}, new long[] {0, 0, 1}, new long[] {1, 1, 1});

    assertThat(basis.rank()).isEqualTo(2);
  }

  @Test
  void a_copy_grows_by_itself() {
    ModularBasis basis = of(new long[] {1, 0});
    ModularBasis copy = basis.copy();

    copy.add(new long[] {0, 1});

    assertThat(copy.rank()).isEqualTo(2);
    assertThat(copy.spans(new long[] {1, 1})).isTrue();
    assertThat(basis.rank()).isEqualTo(1);
    assertThat(basis.spans(new long[] {0, 1})).isFalse();
  }
}
