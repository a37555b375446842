package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** Sheets in the shapes people keep: titles above, parts side by side, two values in a cell. */
class SheetShapesTest {

  @TempDir Path folder;

  private static RecordsReader reader(String dictionary) {
    return RecordsReader.defaults()
        .withToday(LocalDate.of(2026, 11, 25))
        .withDictionary(SheetDictionary.parse("d.json", dictionary));
  }

  private GraftRecords read(String text, String dictionary) throws IOException {
    return reader(dictionary).read(List.of(Files.writeString(folder.resolve("sheet.csv"), text)));
  }

  private List<String> said(GraftRecords records, Severity severity) {
    return records.problems().stream()
        .filter(problem -> problem.severity() == severity)
        .map(Problem::sentence)
        .map(sentence -> sentence.replace(folder + "/", ""))
        .toList();
  }

  @Test
  void headings_stand_in_the_row_the_dictionary_names() throws IOException {
    String text =
        """
        \uFEFFGrafting 2025;;;\r
        kept by Jo;;;\r
        \r
        Sorte;rootstock;grafts;takes\r
        Orrin;Pellin;10;4\r
        """;
    String dictionary = "{\"heading_row\": 4, \"columns\": {\"cultivar\": \"Sorte\"}}";
    assertThat(read(text, dictionary).takes()).isEqualTo(4);
    assertThatThrownBy(() -> read(text, "{\"heading_row\": 40}"))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("found \"nothing in line 40\"");
    assertThatThrownBy(() -> SheetDictionary.parse("d", "{\"heading_row\": \"four\"}"))
        .hasMessageContaining("expected the number of a line, from 1");
  }

  @Test
  void headings_of_a_worksheet_stand_below_its_title() throws IOException {
    Path file = folder.resolve("club.xlsx");
    try (OutputStream out = Files.newOutputStream(file);
        Workbook book = new Workbook(out, "Taketally test", "1.0")) {
      Worksheet sheet = book.newWorksheet("2025");
      String[][] cells = {
        {"Season 2025"}, {}, {"cultivar", "rootstock", "outcome"}, {"Orrin", "Pellin", "taken"}
      };
      for (int r = 0; r < cells.length; r++) {
        for (int c = 0; c < cells[r].length; c++) {
          sheet.value(r, c, cells[r][c]);
        }
      }
    }
    assertThat(reader("{\"heading_row\": 3}").read(List.of(file)).takes()).isEqualTo(1);
    assertThatThrownBy(() -> reader("{}").read(List.of(file)))
        .hasMessageContaining("line 3 looks like the headings: say \"heading_row\": 3");
  }

  private static final String WIDE =
      "{\"wide\": [{\"set\": {\"season\": \"2023\"}, \"columns\": {\"grafts\": \"made 23\","
          + " \"takes\": \"alive 23\"}}, {\"set\": {\"season\": \"2024\"}, \"columns\":"
          + " {\"grafts\": \"made 24\", \"takes\": \"alive 24\"}}]}";

  @Test
  void a_wide_sheet_is_turned_long() throws IOException {
    GraftRecords records =
        read(
            """
            cultivar,rootstock,made 23,alive 23,made 24,alive 24
            Orrin,Pellin,10,4,20,11
            Bexley,Pellin,,,8,8
            """,
            WIDE);
    assertThat(records.grafts()).isEqualTo(38);
    assertThat(records.takes()).isEqualTo(23);
    assertThat(records.frame().stringColumn("season").asList())
        .containsExactly("2023", "2024", "2024");
    assertThat(records.frame().columnNames()).doesNotContain("made 23", "alive 24");
  }

  @Test
  void a_tray_with_a_stock_in_each_column_is_turned_long() throws IOException {
    GraftRecords records =
        read(
            "cultivar,Pellin,Halden\nOrrin,x,\nOrrin,,x\nBexley,x,x\n",
            "{\"columns\": {\"outcome\": {\"same\": {\"taken\": [\"x\"]}}}, \"wide\": [{\"set\":"
                + " {\"rootstock\": \"Pellin\"}, \"columns\": {\"outcome\": \"Pellin\"}}, {\"set\":"
                + " {\"rootstock\": \"Halden\"}, \"columns\": {\"outcome\": \"Halden\"}}]}");
    assertThat(records.takes()).isEqualTo(4);
    assertThat(records.frame().stringColumn("rootstock").asList())
        .containsExactly("Pellin", "Halden", "Pellin", "Halden");
  }

  /** Rows set aside are long already; they are repaired and read with the same dictionary. */
  @Test
  void rows_of_a_wide_sheet_set_aside_are_read_again() throws IOException {
    GraftRecords records =
        read("cultivar,rootstock,made 23,alive 23,made 24,alive 24\nA,B,10,14,20,11\n", WIDE);
    assertThat(records.takes()).isEqualTo(11);
    Path repaired =
        Files.writeString(
            folder.resolve("set-aside.csv"), records.setAside().csv().replace(",14,", ",8,"));
    GraftRecords again = reader(WIDE).read(List.of(repaired));
    assertThat(again.takes()).isEqualTo(8);
    assertThat(again.frame().stringColumn("season").get(0)).isEqualTo("2023");
  }

  @Test
  void a_heading_of_a_wide_sheet_that_is_not_there_is_named() {
    assertThatThrownBy(() -> read("cultivar,rootstock,made 23\nA,B,1\n", WIDE))
        .hasMessageContaining(
            "expected a heading \"alive 23\", which the dictionary names under wide");
  }

  @Test
  void takes_and_grafts_in_one_cell_are_read() throws IOException {
    GraftRecords records =
        read(
            "cultivar,rootstock,takes\nA,B,12 of 15\nA,C,3/8\nA,D,4 von 9\nA,E,9 of 8\nA,F,1\n",
            "{}");
    assertThat(records.grafts()).isEqualTo(15 + 8 + 9 + 1);
    assertThat(records.takes()).isEqualTo(20);
    assertThat(said(records, Severity.ERROR))
        .containsExactly(
            "sheet.csv line 5, column takes: found \"9 of 8\", expected a whole number from 0 to 8"
                + " (grafts); correct takes or grafts");
    assertThat(
            said(read("cultivar,rootstock,grafts,takes\nA,B,16,12 of 15\n", "{}"), Severity.ERROR))
        .hasSize(1)
        .first()
        .asString()
        .contains("expected as many grafts as 16");
  }

  @Test
  void units_in_cells_are_read() throws IOException {
    GraftRecords records =
        read(
            "cultivar,rootstock,storage_temp_c,scion_diameter_mm,outcome\n"
                + "A,B,41 F,6 mm,taken\nA,B,5°C,\"0.25\"\"\",taken\nA,B,6,1cm,taken\n"
                + "A,B,41 K,6,taken\n",
            "{}");
    assertThat(records.frame().doubleColumn("storage_temp_c").asList().subList(0, 3))
        .containsExactly(5.0, 5.0, 6.0);
    assertThat(records.frame().doubleColumn("scion_diameter_mm").asList())
        .containsExactly(6.0, 6.35, 10.0, 6.0);
    assertThat(said(records, Severity.CHECK)).anyMatch(text -> text.contains("found \"41 K\""));
  }

  @Test
  void an_optional_cell_that_cannot_be_read_costs_the_cell_not_the_row() throws IOException {
    GraftRecords records =
        read(
            """
            cultivar,rootstock,graft_date,bud_stage,storage_temp_c,outcome
            A,B,31.02.2025,half,cold,taken
            A,B,2025-03-01,dormant,5,perhaps
            """,
            "{}");
    assertThat(records.frame().rowCount()).isEqualTo(1);
    assertThat(said(records, Severity.CHECK))
        .hasSize(3)
        .allMatch(text -> text.endsWith("; read as not recorded until then"));
    assertThat(said(records, Severity.ERROR)).hasSize(1);
    assertThat(records.summary().count(Severity.ERROR)).isEqualTo(1);
    assertThat(records.setAside().size()).isEqualTo(1);
  }

  @Test
  void curly_quotation_marks_around_headings_are_taken_off() throws IOException {
    assertThat(read("“cultivar”,„rootstock“,outcome\nA,B,taken\n", "{}").takes()).isEqualTo(1);
  }

  @Test
  void every_crop_profile_can_be_read_and_names_its_sources() {
    assertThat(CropProfiles.names()).hasSizeGreaterThanOrEqualTo(14).isSorted();
    for (String name : CropProfiles.names()) {
      assertThat(CropProfiles.named(name).crop()).isEqualTo(name);
    }
  }

  @Test
  void a_template_of_a_crop_profile_is_a_profile() throws IOException {
    Path file = Files.writeString(folder.resolve("quince.csv"), CropProfiles.template("apple"));
    assertThat(CropProfiles.load(file).crop()).isEqualTo("my-crop");
  }

  @Test
  void what_is_wrong_with_headings_below_a_title_is_said_of_their_line() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("titled.csv"),
            "Halden Bay,,\n,,\nVariety,Stock,made\nOrrin,Pellin,10\n");
    assertThatThrownBy(
            () ->
                RecordsReader.defaults()
                    .withDictionary(
                        SheetDictionary.parse(
                            "d.json",
                            "{\"heading_row\": 3, \"columns\": {\"cultivar\": \"Variety\","
                                + " \"rootstock\": \"Stock\", \"grafts\": \"made\"}}"))
                    .read(file))
        .hasMessageContaining("titled.csv line 3: found \"Variety, Stock, made\"")
        .hasMessageNotContaining("looks like the headings");
  }

  @Test
  void a_crop_profile_cut_short_or_misspelt_is_told_in_the_words_of_its_file() throws IOException {
    String head = "item,value,unit,source\ncrop,Pear,text,name\n";
    Path file = Files.writeString(folder.resolve("crop.csv"), head);
    assertThatThrownBy(() -> CropProfiles.load(file))
        .hasMessageContaining("crop.csv: found \"no line version\"")
        .hasMessageContaining("taketally crop template");
    Files.writeString(file, head + "storage_tmp_min,4,°C,me\n");
    assertThatThrownBy(() -> CropProfiles.load(file))
        .hasMessageContaining("line 3: found \"storage_tmp_min\"")
        .hasMessageContaining("did you mean storage_temp_min?")
        .hasMessageNotContaining("STORAGE");
  }
}
