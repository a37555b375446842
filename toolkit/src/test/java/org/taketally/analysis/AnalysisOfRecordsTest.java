package org.taketally.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.answers.effects.FactorImportance.Importance;
import org.taketally.answers.effects.FactorImportance.Kind;
import org.taketally.plan.forecast.PastSeasons;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.wording.ModelWords;

/** What the door does with records as they are kept: own batches, results left blank. */
class AnalysisOfRecordsTest {

  private static final AnswerOptions OPTIONS = AnswerOptions.defaults().withDraws(200);
  private static final List<String> STOCKS = List.of("Pellin", "Halden", "Marrow");

  @TempDir Path folder;

  private Path sheet;

  /** 600 grafts; the wood of fridge batch 4 is bad, trays don't matter. */
  @BeforeEach
  void write() throws IOException {
    Random random = new Random(5);
    StringBuilder text =
        new StringBuilder("cultivar,rootstock,grafter,outcome,fridge_batch,tray,depot\n");
    for (int i = 0; i < 600; i++) {
      int batch = 1 + random.nextInt(6);
      boolean took = random.nextDouble() < (batch == 4 ? 0.2 : 0.8);
      text.append("Orrin %d,".formatted(random.nextInt(4)))
          .append(STOCKS.get(random.nextInt(3)))
          .append(",G%d,".formatted(random.nextInt(4)))
          .append(took ? "taken," : "failed,")
          .append("%d,tray %d,Mill\n".formatted(batch, random.nextInt(20)));
    }
    sheet = Files.writeString(folder.resolve("sheet.csv"), text);
  }

  private GraftRecords read(String dictionary) {
    return RecordsReader.defaults()
        .withDictionary(SheetDictionary.parse("d.json", dictionary))
        .read(List.of(sheet));
  }

  private static List<String> said(GraftRecords records) {
    return SuggestedModel.of(records).choices().stream().map(ModelWords::of).toList();
  }

  @Test
  void a_bad_batch_of_wood_is_named_among_what_moves_take() {
    GraftRecords records = read("{\"batches\": [\"fridge_batch\"]}");
    Analysis analysis = Analysis.of(records, OPTIONS);

    assertThat(analysis.fit().model().varying()).contains("fridge_batch");
    Importance first = analysis.importance().factors().get(0);
    assertThat(first.factor()).isEqualTo("fridge_batch");
    assertThat(first.kind()).isEqualTo(Kind.VARYING);
    assertThat(first.levels()).isEqualTo(6);
    assertThat(first.worst()).isEqualTo("4");
    assertThat(first.span().low()).isGreaterThan(0.3);
    assertThat(said(records))
        .contains("Varying around a common mean: cultivar, pairing, grafter and fridge batch.");
  }

  @Test
  void batches_are_named_one_by_one_and_those_left_out_with_the_reason() {
    GraftRecords records = read("{\"batches\": [\"fridge_batch\", \"tray\", \"depot\"]}");

    assertThat(SuggestedModel.of(records).model().varying()).contains("fridge_batch", "tray");
    assertThat(said(records))
        .contains("Not adjusted for depot: all grafts are alike in it.")
        .noneMatch(sentence -> sentence.startsWith("Not in the model"));
  }

  @Test
  void own_columns_not_named_as_batches_are_named_as_left_out() {
    GraftRecords records = read("{}");

    assertThat(SuggestedModel.of(records).model().columns())
        .doesNotContain("fridge_batch", "tray", "depot");
    assertThat(said(records))
        .contains(
            "Not in the model unless it is named: fridge batch, tray and depot. If grafts alike in"
                + " one of them share their luck (a tray, a fridge batch), name it under"
                + " \"batches\" in the dictionary, or as something that varies.");
  }

  /** A column of ours named as batches groups; storage days no longer enter as a number, then. */
  @Test
  void a_column_of_ours_can_be_named_as_batches() throws IOException {
    Files.writeString(
        sheet,
        Files.readString(sheet)
            .replace("fridge_batch", "storage_days")
            .replace("depot", "budwood_kept"));
    GraftRecords records = read("{\"batches\": [\"storage_days\", \"rootstock\", \"outcome\"]}");
    SuggestedModel suggested = SuggestedModel.of(records);

    assertThat(suggested.model().varying()).contains("storage_days").doesNotContain("rootstock");
    assertThat(suggested.model().adjusted()).containsExactly("rootstock");
    Importance first = Analysis.of(records, OPTIONS).importance().factors().get(0);
    assertThat(first.factor()).isEqualTo("storage_days");
    assertThat(first.worst()).isEqualTo("4");
  }

  @Test
  void records_that_read_two_ways_are_refused_as_the_commands_do() throws IOException {
    Files.writeString(sheet, Files.readString(sheet).replace(",failed,", ",,"));
    GraftRecords open = read("{}");
    String reason = open.check().unsettled().get(0).sentence();

    assertThatThrownBy(() -> Analysis.of(open))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessage(reason)
        .hasMessageContaining("results blank")
        .hasMessageContaining("\"blank_result\": \"failed\"");
    assertThatThrownBy(() -> Analysis.of(open.without("grafter", "G1")))
        .isInstanceOf(RecordsUnreadable.class);
    assertThatThrownBy(() -> PastSeasons.fit(open))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessage(reason);
  }

  @Test
  void records_whose_blanks_are_settled_are_answered() throws IOException {
    Files.writeString(sheet, Files.readString(sheet).replace(",failed,", ",,"));
    Analysis analysis = Analysis.of(read("{\"blank_result\": \"failed\"}"), OPTIONS);
    assertThat(analysis.fit().cells().graftsTotal()).isEqualTo(600);
  }
}
