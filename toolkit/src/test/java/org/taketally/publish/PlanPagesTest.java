package org.taketally.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.verdict.Verdict;
import org.taketally.figure.FigureSize;
import org.taketally.figure.PlanFigures;
import org.taketally.figure.SvgReader;
import org.taketally.plan.next.NextTrial;
import org.taketally.plan.next.NextTrialPlanner;
import org.taketally.plan.order.GraftOrder;
import org.taketally.plan.order.OrderLine;
import org.taketally.plan.order.OrderTerms;
import org.taketally.plan.order.WoodUse;
import org.taketally.plan.size.VerdictChances;
import org.taketally.records.GraftRecords;
import org.taketally.terms.Interval;

/** The pages and figures of plans and orders. */
class PlanPagesTest {

  @TempDir private Path folder;

  /** Two stocks of which too few grafts are known. */
  private GraftRecords few() throws IOException {
    StringBuilder sheet = new StringBuilder("cultivar,rootstock,grafter,graft_date,outcome\n");
    for (int i = 0; i < 120; i++) {
      sheet.append(
          "Orrin,%s,GR-%d,2026-03-0%d,%s%n"
              .formatted(
                  i % 2 == 0 ? "Pellin" : "Ostrey",
                  1 + i / 2 % 2,
                  1 + i / 4 % 3,
                  i * 7 % 12 < 7 ? "taken" : "failed"));
    }
    return GraftRecords.read(Files.writeString(folder.resolve("few.csv"), sheet));
  }

  private static NextTrialPlanner.Settings settings() {
    return new NextTrialPlanner.Settings(
        AnswerOptions.defaults().withDraws(300),
        List.of(),
        List.of("day 1", "day 2"),
        1,
        200,
        0.8,
        3);
  }

  @Test
  void what_to_graft_next_shows_what_it_would_bring_and_the_layout() throws IOException {
    NextTrial next = NextTrialPlanner.of(few(), settings());
    String html = NextTrialPage.of(next).html();
    SvgReader.parse(html.replace("<!DOCTYPE html>", ""));
    assertThat(html)
        .contains("What they would bring</h2>", "The layout</h2>")
        .contains("Not settled yet: ", "plant health rules")
        .contains("in 3 sets of grafts made up and judged like records");
    assertThat(html.split("<figure>", -1)).hasSize(3);
  }

  @Test
  void where_nothing_is_to_be_added_there_is_no_layout() throws IOException {
    NextTrial open = NextTrialPlanner.of(few(), settings());
    NextTrial settled =
        new NextTrial(
            open.now(),
            NextTrial.State.SETTLED,
            List.of(),
            Optional.empty(),
            OptionalDouble.empty(),
            0.8,
            Optional.empty());
    assertThat(NextTrialPage.of(settled).html())
        .contains("nothing needs to be added")
        .doesNotContain("The layout</h2>", "<figure>");
  }

  @Test
  void chances_are_drawn_with_what_so_few_sets_leave_open() {
    Map<Verdict, Integer> counts = new EnumMap<>(Verdict.class);
    counts.put(Verdict.NO_PRACTICAL_DIFFERENCE, 15);
    counts.put(Verdict.CANT_TELL_YET, 5);
    VerdictChances chances = new VerdictChances(counts, 0, 20);
    String svg = PlanFigures.chances(chances, FigureSize.NARROW);
    SvgReader.parse(svg);
    assertThat(svg)
        .contains("no practical difference 75 % (53 to 89 %)", "75 %")
        .contains("settles it", "leaves it open")
        .doesNotContain("matters");
    counts.remove(Verdict.NO_PRACTICAL_DIFFERENCE);
    assertThat(PlanFigures.chances(new VerdictChances(counts, 0, 5)))
        .contains("Settled one way or the other in none of 5 sets made up");
  }

  @Test
  void an_order_is_drawn_line_by_line() {
    GraftOrder.Line had = line("Orrin", OptionalInt.of(148));
    GraftOrder.Line never = line("Dunsober", OptionalInt.empty());
    GraftOrder order =
        new GraftOrder(
            List.of(had, never),
            new OrderTerms(0.9, new WoodUse(1, 4, 0.1), OptionalDouble.empty()),
            List.of(new GraftOrder.Season(List.of(had, never), OptionalDouble.empty())));
    String svg = PlanFigures.order(order);
    SvgReader.parse(svg);
    assertThat(svg)
        .contains("148 grafts for 120 saleable trees; 1 line has no answer", "in 9 seasons of 10")
        .contains("Orrin: 80 % of the grafts (70 to 88 %), 148 grafts for 120 trees")
        .contains("Dunsober: 80 % of the grafts (70 to 88 %), over 1,000,000 grafts for 120 trees");
  }

  private static GraftOrder.Line line(String cultivar, OptionalInt grafts) {
    return new GraftOrder.Line(
        new OrderLine(cultivar, Optional.empty(), 120, Optional.empty()),
        0.8,
        new Interval(0.7, 0.88, 0.8),
        Optional.of(new GraftOrder.ByRate(150, 0.55, 0.1)),
        grafts,
        grafts,
        Optional.empty(),
        OptionalDouble.empty());
  }
}
