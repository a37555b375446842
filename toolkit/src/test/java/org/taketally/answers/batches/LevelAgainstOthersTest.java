package org.taketally.answers.batches;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.taketally.analysis.Analysis;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.verdict.Verdict;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.wording.AnswerWords;
import org.taketally.wording.Wording;

/** Is fridge batch 7 worse? */
class LevelAgainstOthersTest {

  private static final AnswerOptions OPTIONS = AnswerOptions.defaults().withDraws(500);

  /** What grafts of batch 7 share beside it. */
  private enum Shares {
    NOTHING,
    HAND,
    DAY
  }

  /** Grafts of eight fridge batches; batch 7 takes at {@code seventh}, all others at 0.7. */
  private static GraftRecords records(double seventh, Shares shares) {
    Random random = new Random(11);
    StringBuilder sheet =
        new StringBuilder("cultivar,rootstock,grafter,graft_date,fridge_batch,outcome\n");
    for (int i = 0; i < 960; i++) {
      int batch = i % 8 + 1;
      boolean seven = batch == 7;
      int day = seven && shares == Shares.DAY ? 25 : 1 + random.nextInt(20);
      boolean ownHand = seven && shares == Shares.HAND && random.nextInt(10) < 8;
      double take = seven ? seventh : 0.7;
      sheet
          .append("C")
          .append(random.nextInt(4))
          .append(",R")
          .append(random.nextInt(2))
          .append(ownHand ? ",GR-9" : ",GR-" + random.nextInt(3))
          .append(",2026-03-%02d".formatted(day))
          .append(",F")
          .append(batch)
          .append(random.nextDouble() < take ? ",taken\n" : ",failed\n");
    }
    try {
      Path file = Files.createTempFile("season", ".csv");
      file.toFile().deleteOnExit();
      return RecordsReader.defaults().read(Files.writeString(file, sheet));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static LevelAgainstOthers asked(GraftRecords records, String column, String level) {
    return Analysis.of(records, OPTIONS)
        .withLevelAgainstOthers(records, column, level)
        .levelAgainstOthers()
        .orElseThrow();
  }

  @Test
  void a_bad_batch_is_worse_by_about_what_was_put_in() {
    LevelAgainstOthers answer = asked(records(0.25, Shares.NOTHING), "fridge_batch", "f7");
    assertThat(answer.level()).isEqualTo("F7");
    assertThat(answer.verdict().verdict()).isIn(Verdict.MATTERS, Verdict.DIFFERS_UNSETTLED);
    assertThat(answer.difference().orElseThrow().difference().interval())
        .satisfies(r -> assertThat(r.contains(-0.45)).as("%s", r).isTrue());
    assertThat(answer.difference().orElseThrow().difference().high()).isNegative();
    assertThat(answer.tally().grafts()).isEqualTo(120);
    assertThat(answer.others().grafts()).isEqualTo(840);
    AnswerWords words = Wording.of(answer);
    assertThat(words.headline())
        .startsWith("Yes")
        .contains("fridge batch F7 takes about", "worse than the others", "from 120 grafts of it");
  }

  @Test
  void says_what_else_the_batch_shares_hands_by_letter() {
    LevelAgainstOthers answer = asked(records(0.7, Shares.HAND), "fridge_batch", "F7");
    assertThat(answer.shared()).hasSize(1);
    LevelAgainstOthers.Shared hand = answer.shared().get(0);
    assertThat(hand.column()).isEqualTo("grafter");
    assertThat(hand.level()).startsWith("grafter ");
    assertThat(hand.here()).isBetween(0.7, 0.9);
    assertThat(hand.elsewhere()).isZero();
    assertThat(Wording.of(answer).text())
        .contains("have grafter ")
        .doesNotContain("grafter grafter");
    assertThat(answer.verdict().verdict()).isNotIn(Verdict.MATTERS, Verdict.DIFFERS_UNSETTLED);
  }

  /** A batch grafted on one day of its own can't be told from that day. */
  @Test
  void a_batch_on_a_day_of_its_own_is_told_with_its_day() {
    LevelAgainstOthers answer = asked(records(0.45, Shares.DAY), "fridge_batch", "F7");
    assertThat(answer.shared())
        .anySatisfy(
            shared -> {
              assertThat(shared.column()).isEqualTo("grafting_day");
              assertThat(shared.alone()).isEqualTo(1);
            });
    assertThat(Wording.of(answer).text())
        .contains("that no other graft has", "what nobody else had can't be told from");
  }

  @Test
  void columns_of_the_model_can_be_asked_too() {
    GraftRecords records = records(0.7, Shares.NOTHING);
    assertThat(asked(records, "rootstock", "R1").others().grafts()).isBetween(400L, 560L);
    assertThat(asked(records, "grafter", "GR-1").difference()).isPresent();
  }

  @Test
  void a_level_that_all_grafts_have_is_refused() {
    GraftRecords one = records(0.7, Shares.NOTHING).where("fridge_batch", "F7");
    assertThatThrownBy(() -> asked(one, "fridge_batch", "F7"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(
            "every assessed graft has fridge_batch \"F7\", so there are no others to compare"
                + " with; read records that hold others");
    GraftRecords stock = records(0.7, Shares.NOTHING).where("rootstock", "R1");
    assertThatThrownBy(() -> asked(stock, "rootstock", "R1"))
        .hasMessageContaining("so there are no others to compare with");
  }

  @Test
  void names_the_levels_there_are() {
    GraftRecords records = records(0.7, Shares.NOTHING);
    assertThatThrownBy(() -> asked(records, "fridge_batch", "9"))
        .hasMessageContaining("no assessed graft has fridge_batch \"9\"; there are F1, F2");
    assertThatThrownBy(() -> asked(records, "fridge", "7")).hasMessageContaining("fridge_batch");
  }

  /** A sheet's 8.0 is kept as 8. */
  @Test
  void a_number_may_be_asked_for_as_the_sheet_writes_it() throws IOException {
    StringBuilder sheet = new StringBuilder("cultivar,rootstock,fridge,grafts,takes\n");
    for (int i = 0; i < 12; i++) {
      sheet.append("Orrin,Pellin,%d.0,20,%d%n".formatted(7 + i % 2, 8 + i));
    }
    Path file = Files.createTempFile("fridges", ".csv");
    file.toFile().deleteOnExit();
    GraftRecords records = RecordsReader.defaults().read(Files.writeString(file, sheet));
    assertThat(asked(records, "fridge", "8.0").level()).isEqualTo("8");
  }
}
