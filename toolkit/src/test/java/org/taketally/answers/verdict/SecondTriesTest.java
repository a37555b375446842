package org.taketally.answers.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.cells.CellsOf;
import org.taketally.model.TakeModel;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;

/**
 * Stocks that failed once are grafted again, mostly with what was at hand late in the season: that
 * stock then looks bad, because poor plants were left.
 */
class SecondTriesTest {

  @TempDir private Path folder;

  private GraftRecords records(boolean said) throws IOException {
    SplittableRandom random = new SplittableRandom(20260611);
    StringBuilder text =
        new StringBuilder("record,season,site,cultivar,rootstock,replaces,outcome\n");
    int record = 0;
    for (int plant = 0; plant < 1200; plant++) {
      boolean poor = random.nextDouble() < 0.4;
      double take = poor ? 0.25 : 0.9;
      String cultivar = "Cultivar " + random.nextInt(3);
      boolean first = random.nextDouble() < take;
      String stock = random.nextDouble() < 0.7 ? "Pellin" : "Ostrey";
      text.append(line(++record, cultivar, stock, "", first));
      if (!first) {
        boolean again = random.nextDouble() < take;
        String other = random.nextDouble() < 0.15 ? "Pellin" : "Ostrey";
        text.append(line(record + 1, cultivar, other, said ? "R" + record : "", again));
        record++;
      }
    }
    Path sheet = folder.resolve(said + ".csv");
    Files.writeString(sheet, text);
    return RecordsReader.defaults().withToday(LocalDate.of(2030, 1, 1)).read(List.of(sheet));
  }

  private static String line(
      int record, String cultivar, String stock, String replaces, boolean took) {
    return "R%d,2026,Home,%s,%s,%s,%s\n"
        .formatted(record, cultivar, stock, replaces, took ? "taken" : "failed");
  }

  private FactorVerdict verdict(boolean said) throws IOException {
    GraftRecords records = records(said);
    TakeModel model = SuggestedModel.of(records).model();
    return RootstockVerdictCalculator.of(
            model, CellsOf.records(records, SuggestedModel.needed(model)), AnswerOptions.defaults())
        .type();
  }

  @Test
  void second_tries_are_compared_with_second_tries() throws IOException {
    assertThat(SuggestedModel.of(records(true)).model().adjusted()).contains("graft_attempt");
    FactorVerdict verdict = verdict(true);
    assertThat(verdict.verdict()).isEqualTo(Verdict.NO_PRACTICAL_DIFFERENCE);
    assertThat(verdict(false).verdict())
        .as("without the column a stock used for second tries looks worse")
        .isIn(Verdict.MATTERS, Verdict.DIFFERS_UNSETTLED);
  }

  @Test
  void first_and_second_tries_are_named() throws IOException {
    GraftRecords records = records(true);
    assertThat(records.frame().stringColumn("graft_attempt").countByCategory().rowCount())
        .isEqualTo(2);
    long again = records.frame().stringColumn("graft_attempt").isEqualTo("again").size();
    assertThat(again).isEqualTo(records.frame().rowCount() - 1200);
  }
}
