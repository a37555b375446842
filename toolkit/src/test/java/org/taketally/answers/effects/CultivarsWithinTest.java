package org.taketally.answers.effects;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.FallbackFit;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.terms.Logit;
import org.taketally.terms.Provenance;

/** Cultivars of which one was mostly a beginner's, or none; all of them take alike. */
class CultivarsWithinTest {

  private static final int GRAFTS = 1500;
  private static final int CULTIVARS = 6;
  private static final int HANDS = 3;
  private static final int DAYS = 40;

  /** The first hand is a beginner's: about 4 in 10 take, of the others about 7 in 10. */
  private static final double BEGINNER = -1.3;

  private static Factor factor(String name, int levels, int[] codes) {
    return new Factor(
        name, IntStream.range(0, levels).mapToObj(l -> "%s %d".formatted(name, l)).toList(), codes);
  }

  /**
   * Makes records.
   *
   * @param beginners share of the first cultivar's grafts that are the beginner's
   */
  private static Cells records(double beginners, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int[] cultivar = random.ints(GRAFTS, 0, CULTIVARS).toArray();
    int[] day = random.ints(GRAFTS, 0, DAYS).toArray();
    int[] hand = new int[GRAFTS];
    int[] takes = new int[GRAFTS];
    int[] grafts = new int[GRAFTS];
    Arrays.fill(grafts, 1);
    for (int i = 0; i < GRAFTS; i++) {
      boolean beginner = random.nextDouble() < (cultivar[i] == 0 ? beginners : 1.0 / HANDS);
      hand[i] = beginner ? 0 : 1 + random.nextInt(HANDS - 1);
      double take = Logit.take(0.9 + (beginner ? BEGINNER : 0));
      takes[i] = random.nextDouble() < take ? 1 : 0;
    }
    return new Cells(
        List.of(
            factor("cultivar", CULTIVARS, cultivar),
            factor("grafter", HANDS, hand),
            factor("grafting_day", DAYS, day)),
        List.of(),
        grafts,
        takes,
        0,
        Provenance.of("made for a test", GRAFTS));
  }

  private static Difficulty difficulty(Cells cells) {
    return DifficultyCalculator.of(
        FallbackFit.of(cells, SuggestedModel.of(cells).model()).fit(),
        AnswerOptions.defaults().withDraws(400));
  }

  @Test
  void a_beginners_cultivar_is_compared_within_hands() {
    Difficulty found = difficulty(records(0.9, 1));

    Difficulty.Within within = found.within().orElseThrow();
    assertThat(within.groups()).contains("grafter");
    double[] takes = within.takes().values().stream().mapToDouble(t -> t.value()).toArray();
    double others = Arrays.stream(takes, 1, takes.length).average().orElseThrow();
    assertThat(within.takes().get("cultivar 0").interval().contains(others)).isTrue();
    assertThat(found.cultivars().get(0).band()).isNotEqualTo(Band.HARD);
  }

  @Test
  void where_hands_shared_cultivars_evenly_there_is_nothing_to_look_at_again() {
    assertThat(difficulty(records(1.0 / HANDS, 2)).within()).isEmpty();
  }

  /** Had the beginner done one cultivar alone and nothing else, nobody could part the two. */
  @Test
  void every_cultivar_compared_within_is_one_of_the_answer() {
    Difficulty found = difficulty(records(0.7, 3));

    assertThat(found.within().orElseThrow().takes().keySet())
        .containsExactlyInAnyOrderElementsOf(
            found.cultivars().stream().map(Difficulty.CultivarTake::cultivar).toList());
    assertThat(found.otherWithin()).allMatch(c -> c.take().value() > 0);
  }
}
