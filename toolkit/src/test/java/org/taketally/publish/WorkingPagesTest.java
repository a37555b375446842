package org.taketally.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.analysis.Analysis;
import org.taketally.answers.AnswerOptions;
import org.taketally.cells.Cells;
import org.taketally.cells.CellsOf;
import org.taketally.figure.SvgReader;
import org.taketally.model.TakeModel;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.wording.AnswerColumn;
import org.taketally.wording.AnswerTable;
import tech.tablesaw.api.Row;

/** The pages for those who work with the records: analysis and check. */
class WorkingPagesTest {

  /** Headings of what was found, which is worth saying of each row. */
  private static final Set<String> FINDINGS =
      Arrays.stream(AnswerColumn.values())
          .filter(column -> column.kind() == AnswerColumn.Kind.WORDS)
          .map(AnswerColumn::heading)
          .collect(Collectors.toSet());

  private static final Pattern FLAG_OR_NUMBER =
      Pattern.compile("yes|no|((over|under) )?[-+\u2212]?[\\d,.]+.*");

  @TempDir private Path folder;

  private String analysisPage(String sheet) {
    GraftRecords records = Sheets.read(folder, sheet);
    Cells cells = CellsOf.records(records, List.of("cultivar", "rootstock", "grafter"));
    TakeModel model = TakeModel.ofTakes().varyBy("cultivar", "grafter").compare("rootstock");
    AnswerOptions options = AnswerOptions.defaults().withDraws(200);
    Analysis analysis = Analysis.of(cells, model, options);
    return AnalysisPage.of(records, analysis.withLateLoss(records, countedTwice(records))).html();
  }

  /** Each row's takes at the end, and one graft more a month earlier where there was one. */
  private Assessments countedTwice(GraftRecords records) {
    StringBuilder text = new StringBuilder("record,assessed_date,alive\n");
    for (Row row : records.frame()) {
      int takes = row.getInt("takes");
      int early = Math.min(row.getInt("grafts"), takes + 1);
      String record = row.getString("record");
      String last = row.getDate("assessed_date").toString();
      String first = row.getDate("assessed_date").minusDays(30).toString();
      text.append("%s,%s,%d\n%s,%s,%d\n".formatted(record, first, early, record, last, takes));
    }
    try {
      Path file = Files.writeString(folder.resolve("assessments.csv"), text);
      return RecordsReader.defaults().assessments(List.of(file), records);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void analysis_page_says_that_it_is_not_for_publication() {
    assertThat(analysisPage(Sheets.circle(1)))
        .contains("<p class=\"stamp\">Not for publication</p>");
  }

  @Test
  void analysis_page_shows_every_answer_with_figure_words_and_numbers() {
    String html = analysisPage(Sheets.circle(1));

    SvgReader.parse(html.replace("<!DOCTYPE html>", ""));
    assertThat(html)
        .contains("Does the rootstock matter?</h2>")
        .contains("Which cultivars are hard to get to take?</h2>")
        .contains("What moves take?</h2>")
        .contains("How many takes are lost later?</h2>")
        .contains("<summary>The numbers</summary>")
        .contains("What it rests on</h2>", "90 rows read, 90 used, 0 set aside");
    assertThat(html.split("<figure>", -1)).hasSizeGreaterThan(5);
  }

  /** Such as the name of the factor beside each of its levels. */
  @Test
  void tables_of_the_analysis_page_have_no_column_that_names_the_same_in_each_row() {
    List<String> repeated = new ArrayList<>();
    int several = 0;
    for (String table : analysisPage(Sheets.circle(1)).split("<table", -1)) {
      List<List<String>> rows =
          cells(table, "tr").stream().map(row -> cells(row, "t[hd]")).toList();
      several += rows.size() > 2 ? 1 : 0;
      for (int column = 0; rows.size() > 2 && column < rows.get(0).size(); column++) {
        int place = column;
        List<String> values = rows.stream().skip(1).map(row -> row.get(place)).distinct().toList();
        boolean found = FLAG_OR_NUMBER.matcher(values.get(0)).matches();
        if (values.size() == 1 && !found && !FINDINGS.contains(rows.get(0).get(column))) {
          repeated.add(rows.get(0).get(column) + ": " + values.get(0));
        }
      }
    }
    assertThat(several).isGreaterThan(5);
    assertThat(repeated).isEmpty();
  }

  @Test
  void what_such_a_column_says_stands_in_the_caption() {
    AnswerTable table =
        new AnswerTable(
            "pairs",
            "Bud stage, seasons left out",
            List.of(
                AnswerColumn.FACTOR, AnswerColumn.SEASON, AnswerColumn.LEVEL, AnswerColumn.GRAFTS),
            List.of(
                List.of("bud_stage", "2024", "dormant", 40L),
                List.of("bud_stage", "2025", "dormant", 40L)));
    assertThat(Block.Answers.of(table).answerTable())
        .contains("Bud stage, seasons left out (Level: dormant)</caption>")
        .doesNotContain("<td>dormant", "bud_stage");
    assertThat(table.toCsv()).contains("bud_stage,2025,dormant,40");
  }

  private static List<String> cells(String html, String tag) {
    return Pattern.compile("(?s)<(" + tag + ")\\b[^>]*>(.*?)</\\1>")
        .matcher(html.contains("</table>") ? html.substring(0, html.indexOf("</table>")) : html)
        .results()
        .map(found -> found.group(2))
        .toList();
  }

  @Test
  void analysis_page_hides_grafters_behind_letters_but_keeps_small_cultivars() {
    String html = analysisPage(Sheets.circle(1));

    assertThat(html).doesNotContain("Qmember").contains("Cv8");
  }

  @Test
  void check_page_names_place_found_expected_and_remedy_of_each_problem() {
    String sheet =
        Sheets.circle(1) + "bad,2022,x,y,Cv1,St1,2022-03-10,2022-06-15,5,4,9,<i>note</i>\n";
    GraftRecords records = Sheets.read(folder, sheet);
    String html = CheckPage.of(records).html();

    SvgReader.parse(html.replace("<!DOCTYPE html>", ""));
    assertThat(records.provenance().rowsSetAside()).isEqualTo(1);
    assertThat(html)
        .contains("91 rows read: 90 used, 1 set aside.")
        .contains(
            "grafts.csv line 92</th>",
            "data-label=\"Column\">takes</td>",
            "data-label=\"Found\">9</td>")
        .contains("Set aside until repaired</h2>");
  }

  /** The name of a folder may stand in a cell as well: what was typed is shown as typed. */
  @Test
  void check_page_shows_cells_as_typed_whatever_the_folder_is_called() throws IOException {
    Path sheet =
        Files.writeString(folder.resolve("a.csv"), SHEET_NAMING_ITS_FOLDER.formatted(folder));
    assertThat(CheckPage.of(RecordsReader.defaults().read(sheet)).html())
        .contains("a.csv line 2", folder + "/2026");
  }

  private static final String SHEET_NAMING_ITS_FOLDER =
      """
      cultivar,rootstock,graft_date,outcome
      A,B,%s/2026,taken
      """;

  /** A page that is passed on doesn't tell the folders of whoever made it. */
  @Test
  void check_page_names_files_without_their_folders() throws IOException {
    Path one =
        Files.writeString(folder.resolve("one.csv"), "cultivar,rootstock,outcome\nA,,taken\n");
    String html = CheckPage.of(RecordsReader.defaults().read(one)).html();
    assertThat(html).contains("one.csv line 2").doesNotContain(folder.toString());
    Path other = Files.createDirectory(folder.resolve("b")).resolve("one.csv");
    Files.copy(one, other);
    assertThat(CheckPage.of(RecordsReader.defaults().read(List.of(one, other))).html())
        .contains(one.toString(), other.toString());
  }

  @Test
  void check_page_names_problems_of_repeated_counts_too() throws IOException {
    Path sheet =
        Files.writeString(
            folder.resolve("grafts.csv"),
            "record,cultivar,rootstock,graft_date,grafts,takes\nA,B,C,2025-03-01,10,8\n");
    Path again =
        Files.writeString(
            folder.resolve("again.csv"),
            "record,assessed_date,alive\nA,2025-04-01,8\nZ,2025-04-01,8\n");
    GraftRecords records = RecordsReader.defaults().read(sheet);
    Assessments counts = RecordsReader.defaults().assessments(List.of(again), records);
    assertThat(CheckPage.of(records.check(), counts.check()).html())
        .contains(
            "Records: 1 row read: 1 used, 0 set aside. Repeated counts: 2 rows read: 1 used, 1 set"
                + " aside.",
            "grafts.csv, again.csv",
            "again.csv line 3</th>",
            "data-label=\"Found\">Z</td>");
  }

  @Test
  void check_page_of_clean_records_says_so() {
    String html = CheckPage.of(Sheets.read(folder, Sheets.circle(1))).html();

    assertThat(html).contains("90 rows read: 90 used, 0 set aside.", "<p>Nothing.</p>");
  }
}
