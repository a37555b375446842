package org.taketally.plan.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.taketally.plan.order.BudwoodPlan.Line;
import org.taketally.wording.BudwoodPlanWords;

/** Requests that share trees, and buds that can't be ready. */
class BudwoodPlanTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 7, 14);

  private static BudwoodRequests read(String lines) throws IOException {
    return BudwoodRequests.read(
        "requests.csv",
        new StringReader("cultivar,sticks,needed,bud_stage,buds,on_tree\n" + lines));
  }

  private static BudwoodPlan plan(String lines) throws IOException {
    BudwoodRequests read = read(lines);
    assertThat(read.problems()).isEmpty();
    return BudwoodPlan.of(read.requests(), new WoodUse(2, 8, 0.1), StorageLimits.UNKNOWN, TODAY);
  }

  @Test
  void requests_of_one_cultivar_share_its_sticks_the_earliest_first() throws IOException {
    BudwoodPlan plan =
        plan("Orrin,40,2026-07-22,,,60\norrin ,40,2026-07-20,,,60\nTamsel,9,2026-07-20,,,10\n");
    assertThat(plan.lines()).extracting(Line::missing).containsExactly(30, 0, 0);
    assertThat(plan.lines()).extracting(Line::canBeMet).containsExactly(false, true, true);
    assertThat(plan.sticks()).isEqualTo(55);
    assertThat(BudwoodPlanWords.of(plan).headline())
        .startsWith("2 of 3 requests can be met as things are");
    assertThat(BudwoodPlanWords.of(plan).more())
        .anyMatch(line -> line.startsWith("Orrin is asked for in 2 requests, 90 sticks"))
        .anyMatch(line -> line.startsWith("Orrin for 2026-07-22: 30 sticks short; 15 on the"));
  }

  @Test
  void what_is_on_the_trees_holds_for_lines_that_leave_it_empty() throws IOException {
    assertThat(plan("Orrin,40,2026-07-20,,,60\nOrrin,40,2026-07-20,,,\n").lines())
        .extracting(Line::missing)
        .containsExactly(0, 30);
  }

  @Test
  void different_numbers_on_the_same_trees_are_a_problem() throws IOException {
    assertThat(read("Orrin,40,2026-07-20,,,60\nORRIN,4,2026-07-21,,,50\n").problems())
        .singleElement()
        .satisfies(
            problem ->
                assertThat(problem.sentence())
                    .contains("line 3, column on_tree", "\"50\"", "60, as an earlier line says"));
  }

  @Test
  void buds_that_cannot_be_ready_are_not_met_and_keep_no_sticks() throws IOException {
    BudwoodPlan plan =
        plan(
            """
            Orrin,40,2026-07-15,flushed,dormant,60
            Orrin,40,2026-08-03,swelling,dormant,60
            """);
    assertThat(plan.lines()).extracting(Line::canBeMet).containsExactly(false, false);
    assertThat(plan.lines())
        .extracting(line -> line.waitsForBuds(TODAY))
        .containsExactly(false, true);
    assertThat(BudwoodPlanWords.of(plan).headline())
        .contains("None of 2 requests", "1 can be if the buds get on in time");
    assertThat(BudwoodPlanWords.of(plan).more())
        .anyMatch(line -> line.contains("would have to be cut today: agree on a later day"));
  }

  @Test
  void a_request_whose_day_has_passed_is_not_to_be_cut() throws IOException {
    BudwoodPlanWords words =
        BudwoodPlanWords.of(
            plan("Orrin,9,2026-07-13,,,30\nOrrin,9,2026-07-20,,,\nOrrin,9,2026-07-21,,,\n"));
    assertThat(words.table().get(0)).contains("too late").doesNotContain("2026-07-14", "ready");
    assertThat(words.more().get(0))
        .startsWith("Orrin is asked for in 2 requests, 20 sticks to cut");
  }
}
