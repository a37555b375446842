package org.taketally.checks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** The comparison itself: a wrong number must not pass. */
class CheckTest {

  private static Check check(String published, String reference) {
    return new Check(
        new PublishedAnswer("plums", "take", published, "2 dp", reference, "a page", false));
  }

  private static double[] numbers(double... values) {
    return values;
  }

  @Test
  void reads_numbers_as_printed() {
    assertThat(Printed.numbers("-0.95, 12 [misprint 7]; 3.34 (1-10), AGQ10"))
        .containsExactly(
            new Printed(-0.95, 2),
            new Printed(12, 0),
            new Printed(3.34, 2),
            new Printed(1, 0),
            new Printed(10, 0));
  }

  @Test
  void agrees_within_half_a_unit_of_the_last_digit() {
    assertThat(check("0.25", "").ours(() -> numbers(0.2549)).run().faults()).isEmpty();
    assertThat(check("0.25", "").ours(() -> numbers(0.2551)).run().faults())
        .containsExactly("published number 1: 0.25, ours 0.2551");
    assertThat(check("0.25", "").ours(() -> numbers(Double.NaN)).run().faults()).hasSize(1);
  }

  @Test
  void whole_numbers_agree_exactly() {
    assertThat(check("17/32; 53.1", "").ours(() -> numbers(17, 32, 53.125)).run().faults())
        .isEmpty();
    assertThat(check("25", "").ours(() -> numbers(25.001)).run().faults()).hasSize(1);
  }

  @Test
  void compares_with_the_other_program_too() {
    assertThat(check("0.25", "0.2512").ours(() -> numbers(0.2531)).run().faults())
        .containsExactly("reference number 1: 0.2512, ours 0.2531");
  }

  @Test
  void shows_ours_with_the_digits_of_the_more_exact_one() {
    assertThat(check("0.25", "0.2512").ours(() -> numbers(0.25119)).run().ours())
        .isEqualTo("0.2512");
    assertThat(check("0.0", "").ours(() -> numbers(-1e-17)).run().ours()).isEqualTo("0.0");
  }

  @Test
  void a_misprint_is_named_and_compared_with_the_right_value() {
    Check misprint = check("0.77", "").readAs("0.077", "misprint").ours(() -> numbers(0.0768));
    assertThat(misprint.run().faults()).isEmpty();
    assertThat(misprint.remark()).isEqualTo("compared with 0.077: misprint");
  }

  @Test
  void refuses_to_compare_different_counts_of_numbers() {
    assertThatThrownBy(() -> check("1.5, 2.5", "").ours(() -> numbers(1.5)).run())
        .hasMessage(
            "plums | take: we give 1 numbers, the published text is \"1.5, 2.5\"; use readAs or"
                + " referenceReadAs");
  }

  @Test
  void has_nothing_to_say_without_anything_to_compare() {
    assertThat(check("", "").ours(() -> numbers(1)).run().faults())
        .containsExactly("nothing to compare with");
  }
}
