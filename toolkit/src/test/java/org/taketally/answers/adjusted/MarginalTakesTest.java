package org.taketally.answers.adjusted;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.taketally.answers.AnswerOptions;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.records.RecordsReader;

class MarginalTakesTest {

  private static final AnswerOptions OPTIONS = AnswerOptions.defaults().withDraws(300);

  private static TakeFit fit() throws IOException {
    Path folder =
        Path.of(System.getProperty("taketally.root", ".."), "datasets/halden-bay-avocado");
    List<Path> files =
        Stream.of("grafts-2022.csv", "grafts-2023.csv").map(folder::resolve).toList();
    TakeModel model =
        TakeModel.ofTakes()
            .adjustFor("method", "stock_condition")
            .adjustForCurve("storage_days", 3)
            .varyBy("cultivar", "grafter", "season")
            .compare("rootstock");
    Cells cells = CellsOf.records(RecordsReader.defaults().read(files), model.columns());
    return model.fit(cells);
  }

  /** Averaged over every graft's own level, takes give back the counted take. */
  @Test
  void shares_weighted_takes_give_back_the_counted_take() throws IOException {
    TakeFit fit = fit();
    MarginalTakes averaging = MarginalTakes.of(fit, OPTIONS);
    double[][] takes = averaging.takes("stock_condition");
    double[] shares = averaging.shares("stock_condition");
    double mean = 0;
    for (int l = 0; l < shares.length; l++) {
      mean += shares[l] * DrawSummary.estimate(DrawSummary.column(takes, l), 0.95).value();
    }
    double counted = (double) fit.cells().takesTotal() / fit.cells().graftsTotal();
    // conditions are not spread quite alike over both levels
    assertThat(mean).isCloseTo(counted, within(0.01));
  }
}
