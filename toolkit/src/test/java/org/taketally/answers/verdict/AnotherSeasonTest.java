package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.model.TakeModel;
import org.taketally.terms.Logit;
import org.taketally.terms.Provenance;
import org.taketally.wording.Wording;

/** Two stocks alike on average over 12 seasons, 200 grafts of each a season. */
class AnotherSeasonTest {

  private static final TakeModel MODEL =
      TakeModel.ofTakes().varyBy("season").varyTogether("rootstock", "season").compare("rootstock");

  private static FactorVerdict.AverageSeason season(double stockBySeason) {
    return note(verdict(stockBySeason));
  }

  private static FactorVerdict.AverageSeason note(FactorVerdict verdict) {
    return verdict.notes().stream()
        .filter(FactorVerdict.AverageSeason.class::isInstance)
        .map(FactorVerdict.AverageSeason.class::cast)
        .findFirst()
        .orElseThrow();
  }

  private static FactorVerdict verdict(double stockBySeason) {
    Random random = new Random(3);
    int[] cells = IntStream.range(0, 24).toArray();
    int[] takes = new int[24];
    for (int season = 0; season < 12; season++) {
      double own = stockBySeason * random.nextGaussian();
      for (int stock = 0; stock < 2; stock++) {
        double take = Logit.take(0.6 + (stock == 0 ? own : -own));
        takes[2 * season + stock] = (int) random.doubles(200).filter(u -> u < take).count();
      }
    }
    Cells counted =
        new Cells(
            List.of(
                new Factor(
                    "rootstock",
                    List.of("Pellin", "Ostrey"),
                    IntStream.of(cells).map(i -> i % 2).toArray()),
                new Factor(
                    "season",
                    IntStream.range(0, 12).mapToObj(year -> "" + (2010 + year)).toList(),
                    IntStream.of(cells).map(i -> i / 2).toArray())),
            List.of(),
            IntStream.of(cells).map(i -> 200).toArray(),
            takes,
            0,
            Provenance.of("made for a test", 4800));
    return RootstockVerdictCalculator.of(MODEL, counted, AnswerOptions.defaults()).type();
  }

  @Test
  void stocks_that_do_the_same_every_year_do_so_in_another() {
    assertThat(season(0).nextWithinMargin()).isGreaterThan(0.85);
  }

  /** Stocks up to 30 points apart in single years: another year is open, whatever the average. */
  @Test
  void stocks_that_change_places_may_do_so_again() {
    FactorVerdict verdict = verdict(0.6);
    assertThat(note(verdict).nextWithinMargin()).isBetween(0.1, 0.5);
    assertThat(Wording.of(verdict).text())
        .contains("that in another season all lie within 10 points of each other has a chance of");
  }
}
