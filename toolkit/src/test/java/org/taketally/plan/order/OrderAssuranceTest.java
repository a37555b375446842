package org.taketally.plan.order;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.taketally.plan.order.GraftOrderTest.OrderSeasons;
import org.taketally.plan.order.SeasonTakes.BatchLuck;

/** What orders deliver in 2,000 simulated seasons each, against the assurance asked for. */
class OrderAssuranceTest {

  /** One graft more or less moves the chance by up to a point or two of its own at 20 trees. */
  @ParameterizedTest
  @CsvSource({
    "100, 0.75, 0.02, 20, 0.05, 0.9",
    "100, 0.75, 0.02, 20, 0.05, 0.8",
    "60, 0.40, 0.08, 10, 0.10, 0.9",
    "40, 0.90, 0.03, 25, 0.02, 0.95",
    "250, 0.60, 0.05, 30, 0.08, 0.9",
    "100, 0.50, 0.00, 1, 0.00, 0.9"
  })
  void assurance_is_within_two_points(
      int trees, double take, double season, int batch, double luck, double assurance) {
    double share =
        OrderSeasons.shareDelivered(
            trees, take, season, new BatchLuck(batch, luck), assurance, 2000);
    assertThat(share).isBetween(assurance - 0.02, assurance + 0.02);
  }
}
