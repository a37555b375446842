package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.dictionary.SheetDictionary;

/** Remarks, lines of totals and second headings among the rows are never counted as grafts. */
class RowsThatAreNoGraftsTest {

  private static final String MARKED =
      """
      {"columns": {"cultivar": "Variety", "rootstock": "Stock",
       "outcome": {"from": "Took", "same": {"taken": ["x"]}}},
       "blank_result": "failed", %s}""";
  private static final String FILLED = MARKED.formatted("\"fill_down\": [\"Variety\", \"Stock\"]");

  @TempDir Path folder;

  private Path sheet(String text) throws IOException {
    return Files.writeString(folder.resolve("sheet.csv"), text);
  }

  private GraftRecords read(String dictionary, String text) throws IOException {
    return ByDictionary.read(dictionary, sheet(text));
  }

  private List<String> sentences(GraftRecords records) {
    return records.problems().stream()
        .map(problem -> problem.sentence().replace(folder + "/", ""))
        .toList();
  }

  @Test
  void a_remark_below_the_rows_is_no_failed_graft_of_the_names_above() throws IOException {
    GraftRecords records =
        read(
            FILLED,
            """
            Variety,Stock,Who,Took
            Orrin,Pellin,Jo,x
            ,,Jo,
            ,Halden,Jo,x
            Note: the fridge failed,,,
            ,,bought from the lower nursery,
            """);
    assertThat(records.grafts()).isEqualTo(3);
    assertThat(records.takes()).isEqualTo(2);
    assertThat(sentences(records))
        .contains(
            "sheet.csv line 5, column Variety: found \"Note: the fridge failed\", expected one graft"
                + " or batch in each row, and this stands alone in its row; taken for a remark and"
                + " not counted; take it out, or fill in the row if it is a graft");
  }

  @Test
  void a_remark_is_no_failed_graft_where_all_stand_on_one_stock() throws IOException {
    GraftRecords records =
        RecordsReader.defaults()
            .withDictionary(
                SheetDictionary.parse(
                    "d.json",
                    "{\"columns\": {\"cultivar\": \"Variety\", \"outcome\": {\"from\": \"Took\","
                        + " \"same\": {\"taken\": [\"x\"]}}}, \"constants\": {\"rootstock\":"
                        + " \"Pellin\"}, \"blank_result\": \"failed\"}"))
            .read(List.of(sheet("Variety,Took\nOrrin,x\nBexley,\nlost the rest to frost,\n")));
    assertThat(records.grafts()).isEqualTo(2);
  }

  @Test
  void a_name_alone_heads_the_rows_below_it_and_is_no_graft() throws IOException {
    GraftRecords records =
        read(FILLED, "Variety,Stock,Who,Took\nOrrin,Pellin,Jo,x\nBexley,,,\n,Halden,Jo,x\n");
    assertThat(records.grafts()).isEqualTo(2);
    assertThat(records.frame().stringColumn("cultivar").asList())
        .containsExactly("Orrin", "Bexley");
  }

  /** Added up by hand, and wrongly: arithmetic doesn't find it. */
  @Test
  void a_line_of_totals_that_is_off_is_found_by_its_word_in_any_column() throws IOException {
    String dictionary =
        "{\"columns\": {\"cultivar\": \"Sorte\", \"rootstock\": \"Unterlage\", \"graft_date\":"
            + " \"Datum\"}, \"fill_down\": [\"Sorte\", \"Unterlage\"]}";
    GraftRecords records =
        read(
            dictionary,
            """
            Sorte;Unterlage;Datum;grafts;takes
            Orrin;Pellin;2025-03-01;20;17
            ;Halden;2025-03-02;15;9
            ;;Summe:;36;26
            """);
    assertThat(records.grafts()).isEqualTo(35);
    GraftRecords named =
        read(dictionary, "Sorte;Unterlage;Datum;grafts;takes\nO;P;;20;17\nSumme;P;;21;17\n");
    assertThat(named.grafts()).isEqualTo(20);
  }

  @Test
  void a_second_line_of_headings_is_named_as_that() throws IOException {
    GraftRecords records =
        read(
            "{}",
            """
            cultivar,rootstock,grafts,takes
            Orrin,Pellin,10,7
            cultivar,rootstock,grafts,takes
            Orrin,Pellin,11,6
            """);
    assertThat(records.grafts()).isEqualTo(21);
    assertThat(sentences(records))
        .anyMatch(
            said ->
                said.startsWith(
                    "sheet.csv line 3: found \"cultivar, rootstock, grafts, takes\", expected the"
                        + " headings once, above all rows; take this line out; where a second table"
                        + " begins here"));
  }

  @Test
  void suggest_asks_nothing_of_such_rows() throws IOException {
    DictionaryProposal proposal =
        DictionaryProposal.of(
            List.of(
                sheet(
                    """
            Variety,Stock,Made,Alive
            Orrin,Pellin,10,7
            Bexley,Halden,9,8
            Spring 2025,,,
            Variety,Stock,Made,Alive
            Orrin,Pellin,11,6
            Note: cold,,,
            Total,,30,21
            """)));
    assertThat(proposal.questions()).isEmpty();
  }

  @Test
  void results_kept_by_colour_alone_are_not_taken_for_failures() throws IOException {
    String text = "cultivar,rootstock,outcome\nOrrin,Pellin,\nOrrin,Halden,\n";
    assertThat(sentences(read("{}", text)))
        .contains(
            "sheet.csv, column outcome: found \"2 results, all blank\", expected results in the"
                + " cells: a colour, a drawn mark or a crossed-out line isn't read; write the"
                + " results into the cells; if none of these grafts was looked at, say"
                + " \"blank_result\": \"unassessed\" in the dictionary; if every one of them failed,"
                + " \"blank_result\": \"failed\", if every one took, \"taken\"");
    assertThat(DictionaryProposal.of(List.of(sheet(text))).questions())
        .singleElement()
        .asString()
        .contains("all blank: a colour", "write the results into the cells")
        .doesNotContain("blank_result");
  }

  @Test
  void a_name_that_heads_the_rows_below_is_asked_about_and_said_to_be_that() throws IOException {
    Path file =
        sheet(
            """
            Variété;Porte-greffe;Repris oui/non
            Orrin;;
            ;Pellin;oui
            ;Halden;non
            Bexley;;
            ;Halden;oui
            """);
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions())
        .singleElement()
        .asString()
        .contains("up to 3 rows have nothing under \"Variété\"; add \"fill_down\": [\"Variété\"]");
    proposal.open().get(0).settle(0);
    GraftRecords records =
        RecordsReader.defaults()
            .withDictionary(SheetDictionary.parse("d.json", proposal.json()))
            .read(List.of(file));
    assertThat(records.grafts()).isEqualTo(3);
    assertThat(sentences(records))
        .contains(
            "sheet.csv line 2, column Variété: found \"Orrin\", expected one graft or batch in each"
                + " row, and this stands alone in its row; taken for the name of the rows below and"
                + " not counted; take it out, or fill in the row if it is a graft");
  }

  @Test
  void a_total_of_grafts_is_found_by_its_words() throws IOException {
    GraftRecords records =
        read(
            "{\"blank_result\": \"failed\", \"fill_down\": [\"rootstock\"]}",
            "cultivar,rootstock,grafts,takes\nOrrin,Pellin,10,7\nTotal grafts,,11,7\n");
    assertThat(records.grafts()).isEqualTo(10);
    assertThat(sentences(records)).anyMatch(said -> said.contains("take rows of totals"));
  }

  /** A stock may be average, and is no sum for that. */
  @Test
  void a_word_for_means_in_another_column_is_no_row_of_totals() throws IOException {
    GraftRecords records =
        read(
            FILLED,
            """
            Variety,Stock,vigour,stock_diameter_mm,Took
            Orrin,Pellin,average,8,x
            ,,average,average,
            ,Halden,mean,9,x
            """);
    assertThat(records.grafts()).isEqualTo(3);
  }
}
