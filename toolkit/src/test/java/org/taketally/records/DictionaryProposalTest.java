package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

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

/**
 * A proposed dictionary reads the sheet it was proposed for, once its open questions are settled.
 */
class DictionaryProposalTest {

  private static final String CLUB =
      """
      Grafting at the club 2025;;;;;;\r
      ;;;;;;\r
      Sorte;Unterlage;Wer;Veredelt am;Kühlschrank F;Kiste;angewachsen?\r
      Orrin;Pellin;Jo;14.03.2025;41,5;1;ja\r
      Orrin;Halden;Jo;15.03.2025;40,0;1;\r
      Orrin;Halden;Ann;16.03.2025;41,5;2;x\r
      Bexley;Pellin;Ann;17.03.2025;42,5;2;nein\r
      """;

  @TempDir Path folder;

  private static GraftRecords read(String dictionary, Path file) {
    return RecordsReader.defaults()
        .withToday(LocalDate.of(2026, 11, 25))
        .withDictionary(SheetDictionary.parse("d.json", dictionary))
        .read(List.of(file));
  }

  @Test
  void a_sheet_in_german_with_a_title_reads_after_one_edit() throws IOException {
    Path file = Files.writeString(folder.resolve("club.csv"), CLUB);
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions())
        .hasSize(1)
        .first()
        .asString()
        .contains("1 of 4 results under \"angewachsen?\" are blank", "\"blank_result\"");
    assertThat(proposal.reasons())
        .anyMatch(reason -> reason.endsWith("4 of 4 days under \"Veredelt am\" read as d.M.yyyy"));
    GraftRecords records =
        read(proposal.json().replaceFirst("\\{", "{\"blank_result\": \"failed\","), file);
    assertThat(records.grafts()).isEqualTo(4);
    assertThat(records.takes()).isEqualTo(2);
    assertThat(records.batches()).containsExactly("Kiste");
    assertThat(records.setAside().size()).isZero();
    assertThat(records.frame().dateColumn("graft_date").get(0))
        .isEqualTo(LocalDate.of(2025, 3, 14));
    assertThat(records.frame().doubleColumn("storage_temp_c").get(3))
        .isCloseTo(5.83, org.assertj.core.api.Assertions.within(0.01));
  }

  /**
   * One cell in a sheet of counts isn't the unit of the column: it is set aside, the others read.
   */
  @Test
  void one_percentage_among_counts_is_no_unit() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("one.csv"),
            "cultivar,rootstock,grafts,alive\nA,B,4,3\nA,C,5,60 %\nA,B,4,1\nA,C,5,2\n");
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.json()).doesNotContain("percent");
    GraftRecords records = read(proposal.json(), file);
    assertThat(records.takes()).isEqualTo(6);
    assertThat(records.setAside().size()).isEqualTo(1);
  }

  @Test
  void what_reads_two_ways_is_asked_with_both_counts() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("two.csv"),
            "cultivar,rootstock,graft_date,took?\nA,B,04/03/2025,perhaps\nA,B,05/03/2025,yes\n");
    assertThat(DictionaryProposal.of(List.of(file)).questions())
        .anyMatch(q -> q.contains("2 of 2 read as d/M/yyyy, 2 of 2 read as M/d/yyyy"))
        .anyMatch(
            q -> q.contains("\"perhaps\" stands under \"took?\" 1 times and may mean failed or"));
  }

  @Test
  void a_needed_column_nobody_can_guess_is_asked_for() throws IOException {
    Path file = Files.writeString(folder.resolve("none.csv"), "a,b,alive\nx,y,3\n");
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions())
        .hasSize(2)
        .allMatch(q -> q.contains("no heading seems to hold"));
    assertThat(proposal.json()).contains("\"takes\": \"alive\"");
  }

  /** The issue's own sheet: all of it in one workbook of two worksheets. */
  @Test
  void a_workbook_with_everything_at_once_reads_after_three_edits() throws IOException {
    Path file = folder.resolve("club.xlsx");
    try (OutputStream out = Files.newOutputStream(file);
        Workbook book = new Workbook(out, "Taketally test", "1.0")) {
      fill(book.newWorksheet("2024"), "2024");
      fill(book.newWorksheet("2025"), "2025");
    }
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    String edited = proposal.json().replaceFirst("\\{", "{\"blank_result\": \"failed\",");
    GraftRecords records = read(edited, file);
    assertThat(records.grafts()).isEqualTo(2 * 60);
    assertThat(records.takes()).isEqualTo(2 * 22);
    assertThat(records.check().unsettled()).isEmpty();
    assertThat(records.frame().dateColumn("graft_date").countMissing()).isZero();
    assertThat(records.frame().doubleColumn("storage_temp_c").max()).isLessThan(10);
  }

  private static void fill(Worksheet sheet, String year) {
    String[][] cells = {
      {"Season " + year + ", kept by Jo"},
      {},
      {"Variety", "Stock", "Grafted on", "Fridge F", "Made", "Alive"},
      {"Orrin", "Pellin", "14/03/" + year, "41,5", "20", "12"},
      {"Orrin", "Halden", "25/03/" + year, "40,5", "20", ""},
      {"Bexley", "Halden", "03/04/" + year, "42,5", "20", "10"},
      {"alle", "", "", "", "60", "22"}
    };
    for (int r = 0; r < cells.length; r++) {
      for (int c = 0; c < cells[r].length; c++) {
        if (cells[r][c].matches("\\d+") && r > 2) {
          sheet.value(r, c, Integer.parseInt(cells[r][c]));
        } else {
          sheet.value(r, c, cells[r][c]);
        }
      }
    }
  }
}
