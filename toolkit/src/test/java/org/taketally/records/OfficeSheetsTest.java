package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sheets of offices and clubs: what is proposed for them reads them. */
class OfficeSheetsTest {

  @TempDir Path folder;

  private Path sheet(String text) throws IOException {
    return Files.writeString(folder.resolve("sheet.csv"), text);
  }

  private static final String THOUSANDS =
      """
      Variedad;Patrón;Injertados;Prendidos
      Orrin;Pellin;1#250;1#025
      Orrin;Halden;1#100;803
      Bexley;Pellin;900;612
      """;

  @ParameterizedTest
  @ValueSource(strings = {".", " ", "\u00a0", "\u202f", "'", ","})
  void thousands_are_read_as_proposed_and_never_unasked(String sign) throws IOException {
    Path file = sheet(THOUSANDS.replace("#", sign));
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions()).isEmpty();
    assertThat(proposal.reasons())
        .anyMatch(
            reason ->
                reason.endsWith(
                    "counts under \"Injertados\" such as 1%s250 are taken for thousands; take \"decimal\" out of grafts if they aren't"
                        .formatted(sign)));
    GraftRecords records = ByDictionary.read(proposal.json(), file);
    assertThat(records.grafts()).isEqualTo(3250);
    assertThat(records.takes()).isEqualTo(2440);
    String undeclared = proposal.json().replaceAll(",\\s*\"decimal\": \"[.,]\"", "");
    assertThat(ByDictionary.read(undeclared, file).provenance().rowsSetAside()).isEqualTo(2);
  }

  @Test
  void days_and_hands_written_once_are_asked_about() throws IOException {
    Path file =
        sheet(
            """
            Date,Who,Variety,Stock,Took?
            2025-03-04,Jo,Orrin,Pellin,yes
            ,,Orrin,Halden,no
            ,,Bexley,Halden,yes
            2025-03-05,Ann,Orrin,Pellin,no
            """);
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions(file.toString()))
        .containsExactly(
            "up to 2 rows have nothing under \"Who\", \"Date\", which reads as not recorded; add"
                + " \"fill_down\": [\"Who\", \"Date\"] (beside what stands there already) if a blank"
                + " there means the same as above");
    proposal.open().get(0).settle(0);
    assertThat(ByDictionary.read(proposal.json(), file).frame().stringColumn("grafter").asList())
        .containsExactly("Jo", "Jo", "Jo", "Ann");
  }

  @Test
  void ditto_marks_for_days_are_named_and_filled_down() throws IOException {
    Path file =
        sheet(
            """
            Sorte;Unterlage;Datum;Anzahl;angewachsen
            Orrin;Pellin;2025-03-04;10;7
            dto.;Halden;dto.;8;5
            """);
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions())
        .singleElement()
        .asString()
        .contains("ditto marks (dto.) stand under Sorte, Datum; add \"fill_down\"");
    assertThat(
            ByDictionary.read(
                    proposal.json().replaceFirst("\\{", "{\"fill_down\": [\"Sorte\"],"), file)
                .problems())
        .anyMatch(
            problem ->
                problem
                    .sentence()
                    .contains(
                        "column Datum: found \"dto.\", expected the day itself, not a mark for the"
                            + " one above; write the day out, or name its heading"));
    proposal.open().get(0).settle(0);
    assertThat(
            ByDictionary.read(proposal.json(), file)
                .frame()
                .dateColumn("graft_date")
                .countMissing())
        .isZero();
  }

  @Test
  void numbers_of_a_workbook_under_grafted_are_grafts() throws IOException {
    Path file = folder.resolve("book.xlsx");
    try (OutputStream out = Files.newOutputStream(file);
        Workbook book = new Workbook(out, "Taketally test", "1.0")) {
      Worksheet sheet = book.newWorksheet("2025");
      String[] headings = {"Variety", "Stock", "Grafted", "Alive"};
      for (int i = 0; i < headings.length; i++) {
        sheet.value(0, i, headings[i]);
      }
      for (int row = 1; row <= 3; row++) {
        sheet.value(row, 0, "Orrin");
        sheet.value(row, 1, "Pellin");
        sheet.value(row, 2, 10);
        sheet.value(row, 3, 5 + row);
      }
    }
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions()).isEmpty();
    assertThat(ByDictionary.read(proposal.json(), file).grafts()).isEqualTo(30);
  }

  /** Seasons below titles, and a sheet that sums them up. */
  private Path seasons() throws IOException {
    Path file = folder.resolve("book.xlsx");
    try (OutputStream out = Files.newOutputStream(file);
        Workbook book = new Workbook(out, "Taketally test", "1.0")) {
      for (String year : List.of("2024", "2025")) {
        rows(
            book.newWorksheet(year),
            "Grafts " + year,
            "Variety;Stock;Made;Alive",
            "Orrin;Pellin;10;" + (year.equals("2024") ? 7 : 6),
            "Bexley;Halden;9;8");
      }
      rows(book.newWorksheet("Summary"), "Year;Made;Alive", "2024;19;15", "2025;19;14");
    }
    return file;
  }

  private static void rows(Worksheet sheet, String... rows) {
    for (int row = 0; row < rows.length; row++) {
      String[] cells = rows[row].split(";");
      for (int i = 0; i < cells.length; i++) {
        sheet.value(row, i, cells[i]);
      }
    }
  }

  @Test
  void a_worksheet_that_sums_up_others_is_left_out_with_a_word() throws IOException {
    Path file = seasons();
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions()).isEmpty();
    assertThat(proposal.json()).doesNotContain("Summary");
    assertThat(proposal.reasons(file + ", sheet Summary"))
        .singleElement()
        .asString()
        .contains("is taken to hold no records");
    assertThat(ByDictionary.read(proposal.json(), file).grafts()).isEqualTo(38);
  }

  @Test
  void check_points_to_the_headings_of_worksheets_below_titles() throws IOException {
    Path file = seasons();
    assertThatThrownBy(() -> ByDictionary.read("{}", file))
        .hasMessageContaining("line 2 looks like the headings: say \"heading_row\": 2");
  }

  @Test
  void counts_under_days_of_the_calendar_are_asked_about() throws IOException {
    Path file =
        sheet(
            """
            Variété;Porte-greffe;Nb greffes;vivants 15/04/2025;vivants 15/06/2025
            Orrin;Pellin;10;9;7
            Orrin;Halden;12;10;9
            """);
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions(file.toString()))
        .containsExactly(
            "\"vivants 15/04/2025\", \"vivants 15/06/2025\" look like counts of the same grafts on"
                + " several days; add the last one under \"columns\" as takes; to tell early take"
                + " from late loss, give all of them in a second file with a row for each count"
                + " (record, assessed_date, alive) and name it with --assessments");
    assertThat(proposal.open().get(0).choices())
        .containsExactly(
            "\"vivants 15/06/2025\" holds the takes", "\"vivants 15/04/2025\" holds the takes");
    proposal.open().get(0).settle(0);
    assertThat(ByDictionary.read(proposal.json(), file).takes()).isEqualTo(16);
  }

  /** A no-break or a second space can't be seen, and so can't be put right by who reads of it. */
  @Test
  void names_that_differ_in_spaces_alone_are_one() throws IOException {
    Path file =
        sheet(
            """
            cultivar,rootstock,grafts,takes,Bed
            Halden\u00a0Gold,Pellin,10,7,A\u00a01
            Halden  Gold,Pellin,12,9,A 1
            Halden Gold,Pellin,8,5,A  1
            """);
    assertThat(DictionaryProposal.of(List.of(file)).questions()).isEmpty();
    GraftRecords records = ByDictionary.read("{}", file);
    assertThat(records.frame().stringColumn("cultivar").unique().asList())
        .containsExactly("Halden Gold");
    assertThat(records.frame().stringColumn("Bed").unique().asList()).containsExactly("A 1");
  }

  @Test
  void both_names_in_one_cell_are_said_to_need_two_columns() throws IOException {
    Path file = sheet("Combination,Made,Alive\nOrrin/Pellin,10,7\nBexley/Halden,12,9\n");
    assertThat(DictionaryProposal.of(List.of(file)).questions(file.toString()))
        .first()
        .asString()
        .isEqualTo(
            "\"Combination\" seems to hold cultivar and rootstock in one cell (Orrin/Pellin); make"
                + " two columns of it and have the sheet proposed again");
  }

  @Test
  void counts_of_several_months_are_no_grafters_unasked() throws IOException {
    Path file = sheet("Variety,Stock,Made,Alive May,Alive Sept\nO,P,12,11,9\nO,H,12,10,8\n");
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    OpenQuestion question = proposal.open().get(0);
    assertThat(question.text())
        .endsWith(
            "; if they are counts of the same grafts at several times, add \"Alive Sept\" as takes"
                + " instead");
    question.settle(
        question
            .choices()
            .indexOf("counts of the same grafts; \"Alive Sept\" is the last of them"));
    assertThat(ByDictionary.read(proposal.json(), file).takes()).isEqualTo(17);
  }
}
