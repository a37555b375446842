package org.taketally.notebook.display;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.Gson;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.dflib.jjava.jupyter.kernel.BaseKernel;
import org.dflib.jjava.jupyter.kernel.JupyterIO;
import org.dflib.jjava.jupyter.kernel.ReplacementOptions;
import org.dflib.jjava.jupyter.kernel.comm.CommManager;
import org.dflib.jjava.jupyter.kernel.display.DisplayData;
import org.dflib.jjava.jupyter.kernel.display.Renderer;
import org.dflib.jjava.jupyter.kernel.util.StringStyler;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.answers.AnswerOptions;
import org.taketally.answers.effects.Band;
import org.taketally.answers.effects.Difficulty;
import org.taketally.answers.effects.DifficultyCalculator;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.answers.verdict.FactorVerdictCalculator;
import org.taketally.answers.verdict.Verdict;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.model.TakeFit;
import org.taketally.model.TakeModel;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;
import org.taketally.wording.AnswerTable;
import org.taketally.wording.AnswerWords;
import org.taketally.wording.Wording;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/** Values as a notebook shows them. */
class DisplaysTest {

  private static final Problem PROBLEM =
      new Problem(Severity.ERROR, "a<b.csv", 17, "takes", "14", "0 to 12", "count again");

  @TempDir private Path folder;

  private static JsonObject shown(Object value) {
    Renderer renderer = new Renderer();
    Displays.register(renderer);
    return new Gson().toJsonTree(renderer.render(value)).getAsJsonObject().getAsJsonObject("data");
  }

  private static String html(Object value) {
    return shown(value).get("text/html").getAsString();
  }

  private static String text(Object value) {
    return shown(value).get("text/plain").getAsString();
  }

  private GraftRecords records() throws IOException {
    StringBuilder csv = new StringBuilder("cultivar,rootstock,grafter,grafts,takes\n");
    String[] cultivars = {"Orrin", "Selka <i>", "Tamsin"};
    for (int i = 0; i < 60; i++) {
      csv.append(cultivars[i % 3]).append(",stock ").append(i % 2).append(",G").append(i % 4);
      csv.append(",10,").append(4 + (7 * i + i / 5) % 6).append('\n');
    }
    csv.append("Orrin,stock 0,G1,12,many\n");
    return RecordsReader.defaults()
        .read(List.of(Files.writeString(folder.resolve("halden.csv"), csv.toString())));
  }

  @Test
  void long_tables_show_their_first_and_last_rows_types_and_counts() {
    Table table =
        Table.create(
            "lots",
            IntColumn.create("lot", IntStream.range(0, 4812).toArray()),
            StringColumn.create("site", IntStream.range(0, 4812).mapToObj(i -> "<Upper>")));
    assertThat(html(table))
        .contains("lots: 4,812 rows, 2 columns", "whole number", "<td>&lt;Upper&gt;</td>")
        .contains("<td class=\"tt-number\">0</td>", "<td class=\"tt-number\">14</td>")
        .contains("<td class=\"tt-number\">4811</td>", "&#8942;", "tt-scroll")
        .doesNotContain(">15</td>", "<Upper>");
    assertThat(text(table))
        .startsWith("lots: 4,812 rows, 2 columns\n lot  site\n   0  <Upper>\n")
        .contains("\n...\n4807  <Upper>\n");
  }

  @Test
  void missing_values_are_blank_and_counted() {
    DoubleColumn days = DoubleColumn.create("storage_days", 3.5, 0);
    days.appendMissing();
    assertThat(html(Table.create("t", days)))
        .contains(
            "number, 1 missing",
            "<td class=\"tt-number\">3.5</td>",
            "<td class=\"tt-number\"></td>");
  }

  @Test
  void numbers_that_were_worked_out_have_four_digits_and_typed_ones_all() {
    DoubleColumn values =
        DoubleColumn.create(
            "v", 0.8076547602701757, 1234.5678901, 1234.56, 21.35, 1e-7 / 3, -2, 0, 3e12);
    String shown = text(Table.create("t", values));
    assertThat(shown.lines().skip(2).map(String::strip))
        .containsExactly("0.8077", "1235", "1234.56", "21.35", "3.333E-8", "-2", "0", "3E+12");
  }

  @Test
  void wide_tables_name_the_columns_that_plain_text_has_no_room_for() {
    Table table = Table.create("wide");
    for (int i = 0; i < 11; i++) {
      table.addColumns(IntColumn.create("c" + i, 1));
    }
    assertThat(text(table)).endsWith("and 2 more columns: c9, c10\n");
  }

  @Test
  void records_tell_counts_problems_and_rows() throws Exception {
    GraftRecords records = records();
    assertThat(text(records))
        .startsWith(
            "600 grafts assessed, %,d took. 61 rows read, 60 kept, 1 set aside."
                .formatted(records.takes()))
        .contains("Note: 1 error, 1 note; see problems().")
        .contains("records: 60 rows");
    assertThat(html(records)).contains("Selka &lt;i&gt;").doesNotContain("Selka <i>");
    assertThat(html(records.problems())).contains("2 problems: 1 error, 1 note", "halden.csv");
    assertThat(html(records.setAside())).contains("1 row set aside, as typed", "many");
  }

  @Test
  void problems_become_a_table_with_everything_typed_escaped() {
    assertThat(html(List.of(PROBLEM, PROBLEM)))
        .contains("2 problems: 2 errors", "a&lt;b.csv", "count again")
        .doesNotContain("a<b.csv");
    assertThat(text(PROBLEM)).isEqualTo("error: " + PROBLEM.sentence() + "\n");
    List<Problem> many = new ArrayList<>();
    IntStream.range(0, 60).forEach(i -> many.add(PROBLEM));
    assertThat(text(many)).startsWith("60 problems: 60 errors; the first 50 are shown\n");
  }

  @Test
  void other_collections_stay_plain() {
    assertThat(shown(List.of(1, 2)).has("text/html")).isFalse();
    assertThat(text(List.of(1, 2))).isEqualTo("[1, 2]");
    assertThat(text(List.of())).isEqualTo("[]");
  }

  @Test
  void cells_models_fits_and_answers_have_both_forms() throws Exception {
    Cells cells = CellsOf.records(records(), List.of("cultivar", "rootstock", "grafter"));
    assertThat(text(cells)).contains("600 grafts").contains("Orrin, Selka <i>, Tamsin");
    TakeModel model = TakeModel.ofTakes().varyBy("cultivar", "grafter").compare("rootstock");
    assertThat(text(model)).isEqualTo("Takes varying by cultivar, grafter; comparing rootstock.\n");
    TakeFit fit = model.fit(cells);
    assertThat(text(fit))
        .contains("600 grafts in ", "rootstock: stock 1", "Varies between levels")
        .contains("log-likelihood -");
    fit.warnings().forEach(each -> assertThat(text(fit)).contains("Note: " + each.sentence()));
    Difficulty answer = DifficultyCalculator.of(fit, AnswerOptions.defaults());
    AnswerWords words = Wording.of(answer);
    assertThat(text(answer)).startsWith(words.question() + "\n").contains(words.headline());
    assertThat(html(answer)).contains("Selka &lt;i&gt;", "<caption>").doesNotContain("Selka <i>");
    assertThat(html(List.of(answer, answer)).split("tt-head\">", -1)).hasSize(3);
    assertThat(text(words.table())).isEqualTo(words.table().toText());
    FactorVerdict verdict =
        FactorVerdictCalculator.of(fit, "rootstock", AnswerOptions.defaults().withDraws(500));
    AnswerTable levels = Wording.of(verdict).tables().get(1);
    assertThat(levels.toText()).contains("Factor ", "Stands out");
    assertThat(text(levels)).doesNotContain("Factor ").contains("stock 1", "Stands out");
    assertThat(html(levels)).doesNotContain(">Factor<").contains(">Stands out<");
  }

  @Test
  void verdicts_and_bands_are_shown_in_words() {
    assertThat(text(Verdict.NO_PRACTICAL_DIFFERENCE)).isEqualTo("no practical difference\n");
    assertThat(html(Verdict.MATTERS)).contains("<p>matters</p>");
    assertThat(text(Band.HARD)).isEqualTo("hard\n");
  }

  @Test
  void colours_come_from_the_page_so_that_dark_themes_work() {
    assertThat(html(PROBLEM))
        .contains("rgba(128, 128, 128")
        .doesNotContainPattern("[; ]color:|background: #");
  }

  /** A kernel of JJava's line, as far as its base library makes it. */
  private static final class StockKernel extends BaseKernel {

    StockKernel() {
      super(
          "stock",
          "1",
          null,
          List.of(),
          null,
          new JupyterIO(StandardCharsets.UTF_8),
          new CommManager(),
          new Renderer(),
          null,
          null,
          true,
          new StringStyler.Builder().build());
    }

    /** As its kernels do before the first cell. */
    void begin() {
      installDefaultExtensions();
    }

    @Override
    public Object evalRaw(String source) {
      throw new UnsupportedOperationException();
    }

    @Override
    public DisplayData inspect(String code, int at, boolean extraDetail) {
      return null;
    }

    @Override
    public ReplacementOptions complete(String code, int at) {
      return null;
    }

    @Override
    public String isComplete(String code) {
      return IS_COMPLETE_MAYBE;
    }
  }

  @Test
  void a_stock_kernel_finds_the_displays_by_itself() {
    StockKernel kernel = new StockKernel();
    assertThat(new Gson().toJson(kernel.getRenderer().render(PROBLEM))).doesNotContain("text/html");
    kernel.begin();
    assertThat(new Gson().toJson(kernel.getRenderer().render(PROBLEM)))
        .contains("text/html", "taketally");
  }

  @Test
  void one_call_registers_the_displays_in_an_older_kernel() {
    var renderer = new io.github.spencerpark.jupyter.kernel.display.Renderer();
    Displays.registerWith(renderer);
    String shown = new Gson().toJson(renderer.render(List.of(PROBLEM)));
    assertThat(shown).contains("text/html", "text/plain", "1 problem: 1 error");
    assertThat(new Gson().toJson(renderer.render("plain"))).doesNotContain("text/html");
  }

  @Test
  void what_is_no_renderer_is_refused() {
    assertThatThrownBy(() -> Displays.registerWith("kernel"))
        .hasMessage(
            "java.lang.String is no renderer of IJava's line; expected what its kernel's"
                + " getRenderer() gives");
  }
}
