package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
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

  private Path sheet(String text) throws IOException {
    return Files.writeString(folder.resolve("kept.csv"), text);
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
    assertThat(records.frame().doubleColumn("storage_temp_c").get(3)).isCloseTo(5.83, within(0.01));
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
            q -> q.contains("\"perhaps\" stands under \"took?\" once and may mean failed or"));
  }

  /** Counts and words for the same rows exclude each other. */
  @Test
  void counts_beside_words_for_the_same_rows_are_one_of_two() throws IOException {
    Path file =
        sheet(
            """
            Variety,Stock,Alive,Dead,Result
            Orrin,Pellin,1,0,ok
            Orrin,Halden,0,1,no
            Bexley,Pellin,6,3,poor
            """);
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.json()).contains("\"takes\"").doesNotContain("outcome");
    assertThat(proposal.questions(file.toString()))
        .containsExactly(
            "\"Alive\" counts and \"Result\" says a result in words, in 3 rows both; only one of the"
                + " two can be the result: the counts are proposed, and the words kept as a column"
                + " of your own; if the words are the result, take takes out and add \"outcome\":"
                + " \"Result\"");
    assertThat(read(proposal.json(), file).takes()).isEqualTo(7);
    proposal.open().get(0).settle(1);
    assertThat(proposal.json()).contains("\"outcome\": \"Result\"").doesNotContain("takes");
  }

  @Test
  void the_dead_counted_beside_words_are_one_of_two_as_well() throws IOException {
    Path file =
        sheet("Variety,Stock,Made,Dead,Result\nOrrin,Pellin,10,2,good\nOrrin,Halden,9,4,poor\n");
    assertThat(DictionaryProposal.of(List.of(file)).json()).doesNotContain("outcome");
  }

  @Test
  void counts_of_batches_and_words_of_single_grafts_are_proposed_together() throws IOException {
    Path file = sheet("Variety,Stock,Made,Alive,Result\nOrrin,Pellin,10,8,\nOrrin,Halden,1,,yes\n");
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.json()).contains("outcome", "takes");
  }

  @Test
  void a_needed_column_nobody_can_guess_is_asked_for() throws IOException {
    Path file = Files.writeString(folder.resolve("none.csv"), "a,b,alive\nx,y,3\n");
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions())
        .hasSize(3)
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
    String edited = edited(DictionaryProposal.of(List.of(file)));
    reachesTheRightCounts(read(edited, file));
  }

  /** The same as text: a file for each year, semicolons and decimal commas. */
  @Test
  void its_twin_in_text_with_semicolons_reads_after_three_edits() throws IOException {
    List<Path> files = new ArrayList<>();
    for (String year : List.of("2024", "2025")) {
      StringBuilder text = new StringBuilder();
      for (String[] row : cells(year)) {
        text.append(String.join(";", row)).append("\r\n");
      }
      files.add(Files.writeString(folder.resolve("club-" + year + ".csv"), text));
    }
    String edited = edited(DictionaryProposal.of(files));
    reachesTheRightCounts(
        RecordsReader.defaults()
            .withToday(LocalDate.of(2026, 11, 25))
            .withDictionary(SheetDictionary.parse("d.json", edited))
            .read(files));
  }

  /** Three edits: what a blank means, and on each of two sheets a name cut short. */
  private static String edited(DictionaryProposal proposal) {
    List<OpenQuestion> names =
        proposal.open().stream().filter(one -> one.sentence().contains("\"Orr.\"")).toList();
    assertThat(names).hasSize(2);
    names.forEach(one -> one.settle(0));
    assertThat(proposal.open()).allMatch(one -> one.sentence().contains("blank_result"));
    return proposal.json().replaceFirst("\\{", "{\"blank_result\": \"failed\",");
  }

  private static void reachesTheRightCounts(GraftRecords records) {
    assertThat(records.grafts()).isEqualTo(2 * 60);
    assertThat(records.takes()).isEqualTo(2 * 22);
    assertThat(records.setAside().size()).isEqualTo(2); // the totals
    assertThat(records.check().unsettled()).isEmpty();
    assertThat(records.frame().dateColumn("graft_date").countMissing()).isZero();
    assertThat(records.frame().doubleColumn("storage_temp_c").max()).isLessThan(10);
    assertThat(Set.copyOf(records.frame().stringColumn("cultivar").asList()))
        .containsExactlyInAnyOrder("Orrin", "Bexley");
  }

  private static String[][] cells(String year) {
    return new String[][] {
      {"Season " + year + ", kept by Jo", "", "", "", "", ""},
      {"", "", "", "", "", ""},
      {"Variety", "Stock", "Grafted on", "Fridge F", "Made", "Alive"},
      {"Orrin", "Pellin", "14/03/" + year, "41,5", "20", "12"},
      {"Orr.", "Halden", "25/03/" + year, "40,5", "20", ""},
      {"Bexley", "Halden", "03/04/" + year, "42,5", "20", "10"},
      {"alle", "", "", "", "60", "22"}
    };
  }

  private static void fill(Worksheet sheet, String year) {
    String[][] cells = cells(year);
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

  private DictionaryProposal proposed(String sheet) throws IOException {
    return DictionaryProposal.of(List.of(Files.writeString(folder.resolve("s.csv"), sheet)));
  }

  private GraftRecords read(DictionaryProposal proposal) {
    return read(proposal.json(), folder.resolve("s.csv"));
  }

  @Test
  void a_name_cut_short_with_a_dot_is_offered_as_another_spelling() throws IOException {
    DictionaryProposal proposal =
        proposed("cultivar,rootstock,outcome\nCorvane,A,taken\nCorv.,A,failed\nOrrin,A,taken\n");
    assertThat(proposal.questions())
        .singleElement()
        .asString()
        .contains("\"Corv.\" (once under \"cultivar\") may be \"Corvane\" (once)");
    proposal.open().get(0).settle(0);
    assertThat(Set.copyOf(read(proposal).frame().stringColumn("cultivar").asList()))
        .containsExactlyInAnyOrder("Corvane", "Orrin");
  }

  @Test
  void the_dead_in_a_column_of_their_own_are_added_up() throws IOException {
    DictionaryProposal proposal =
        proposed("Variety,Stock,Alive,Dead\nOrrin,Pellin,8,2\nOrrin,Halden,5,5\n");
    assertThat(proposal.questions()).isEmpty();
    GraftRecords records = read(proposal);
    assertThat(records.grafts()).isEqualTo(20);
    assertThat(records.takes()).isEqualTo(13);
  }

  @Test
  void a_sheet_with_grafts_and_dead_gives_takes() throws IOException {
    GraftRecords records =
        read(proposed("Variety,Stock,Made,Dead\nOrrin,Pellin,10,2\nOrrin,Halden,10,5\n"));
    assertThat(records.grafts()).isEqualTo(20);
    assertThat(records.takes()).isEqualTo(13);
  }

  /** Marks of the living and of the dead: neither is a blank result. */
  @Test
  void marks_of_the_dead_are_failures() throws IOException {
    DictionaryProposal proposal =
        proposed("Variety,Stock,Alive,Dead\nA,B,x,\nA,C,,x\nD,B,,x\nD,C,x,died later\n");
    assertThat(proposal.questions()).isEmpty();
    GraftRecords records = read(proposal);
    assertThat(records.grafts()).isEqualTo(3);
    assertThat(records.takes()).isEqualTo(1);
    assertThat(records.setAside().size()).isEqualTo(1);
  }

  @Test
  void where_only_failures_were_marked_a_blank_may_be_a_take() throws IOException {
    DictionaryProposal proposal = proposed("Variety,Stock,Failed\nA,B,x\nA,C,\nD,B,\nD,C,\n");
    assertThat(read(proposal).check().unsettled()).isNotEmpty();
    proposal.open().get(0).settle(0);
    GraftRecords records = read(proposal);
    assertThat(records.grafts()).isEqualTo(4);
    assertThat(records.takes()).isEqualTo(3);
  }

  @Test
  void died_later_is_asked_not_guessed() throws IOException {
    DictionaryProposal proposal =
        proposed("Variety,Stock,Alive/Dead\nA,B,alive\nA,C,dead\nD,B,died later\n");
    assertThat(proposal.open()).hasSize(1);
    assertThat(proposal.open().get(0).choices())
        .anyMatch(choice -> choice.startsWith("taken: it took; a later loss"))
        .anyMatch(choice -> choice.startsWith("failed: not alive when"));
  }

  @Test
  void seasons_side_by_side_become_parts() throws IOException {
    DictionaryProposal proposal =
        proposed(
            """
            Sorte,Unterlage,veredelt 2023,angewachsen 2023,veredelt 24,angewachsen 24
            Orrin,Pellin,10,7,12,9
            Orrin,Halden,8,5,,
            Bexley,Pellin,10,6,10,8
            Summe,,28,18,22,17
            """);
    GraftRecords records = read(proposal);
    assertThat(records.grafts()).isEqualTo(50);
    assertThat(records.takes()).isEqualTo(35);
    assertThat(Set.copyOf(records.frame().stringColumn("season").asList()))
        .containsExactlyInAnyOrder("2023", "2024");
  }

  @Test
  void a_tray_below_a_title_is_asked_about() throws IOException {
    DictionaryProposal proposal =
        proposed("Tray 3 Orrin,,,\nRow,Pellin,Halden,Varric\n1,x,-,x\n2,x,x,-\n3,-,x,\n");
    proposal.open().get(0).settle(0);
    assertThat(proposal.json()).contains("\"heading_row\": 2", "\"rootstock\": \"Varric\"");
    GraftRecords records =
        read(
            proposal.json().replaceFirst("\\{", "{\"constants\": {\"cultivar\": \"Orrin\"},"),
            folder.resolve("s.csv"));
    assertThat(records.grafts()).isEqualTo(8);
    assertThat(records.takes()).isEqualTo(5);
  }

  @Test
  void months_in_words_of_six_languages_are_read() throws IOException {
    DictionaryProposal proposal =
        proposed(
            """
            Variété,Porte-greffe,Date de greffe,Reprises
            A,B,3 mars 2025,12 sur 15
            A,C,4 août 2025,3 sur 5
            A,C,5 de marzo de 2025,3 von 5
            A,B,6 Okt. 2025,1/2
            """);
    GraftRecords records = read(proposal);
    assertThat(records.frame().dateColumn("graft_date").asList())
        .startsWith(LocalDate.of(2025, 3, 3), LocalDate.of(2025, 8, 4), LocalDate.of(2025, 3, 5));
  }

  @Test
  void letters_that_are_not_in_utf8_are_proposed_in_their_encoding() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("l.csv"),
            "Variété;Porte-greffe;Résultat\nOrrin;Pellin;réussi\nOrrin;Halden;échec\n",
            java.nio.charset.StandardCharsets.ISO_8859_1);
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions()).isEmpty();
    assertThat(read(proposal.json(), file).takes()).isEqualTo(1);
  }

  @Test
  void a_heading_over_numbers_grafted_is_no_day() throws IOException {
    assertThat(proposed("Variety,Stock,Grafted,Took\nA,B,20,12\nA,C,10,3\n").json())
        .contains("\"grafts\": \"Grafted\"");
    assertThat(proposed("Variety,Stock,Grafted,Took\nA,B,2025-03-04,x\nA,C,2025-03-04,-\n").json())
        .contains("\"graft_date\": \"Grafted\"");
  }

  /** Marks at two countings are counts of one graft each. */
  @Test
  void marks_at_stated_days_are_counts_of_one() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("m.csv"),
            "Label,Variety,Stock,alive 30 d,alive 90 d\n1,A,B,x,x\n2,A,C,x,died\n3,D,B,-,\n");
    GraftRecords records =
        read(
            """
            {"columns": {"record": "Label", "cultivar": "Variety", "rootstock": "Stock",
                "outcome": {"same": {"taken": ["x"], "failed": ["-", "died"]}}},
             "counts": [{"days": 30, "alive": "alive 30 d"}, {"days": 90, "alive": "alive 90 d"}]}
            """,
            file);
    assertThat(records.grafts()).isEqualTo(3);
    assertThat(records.takes()).isEqualTo(1);
  }

  /** Nobody looked is said, so it is no blank that may stand for failed. */
  @Test
  void marks_for_not_looked_at_are_no_blanks() throws IOException {
    Path file =
        sheet(
            """
            Label,Variety,Stock,Status 30 d,Status 90 d
            1,A,B,+,+
            2,A,C,?,?
            3,D,B,+,-
            4,D,C,,
            """);
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions())
        .anyMatch(said -> said.contains("[Status 30 d, Status 90 d] look like counts at stated"));
    proposal.open().get(0).settle(0);
    GraftRecords records =
        read(proposal.json().replaceFirst("\\{", "{\"blank_result\": \"failed\", "), file);
    assertThat(records.grafts()).isEqualTo(3);
    assertThat(records.takes()).isEqualTo(1);
    assertThat(records.problems())
        .noneMatch(problem -> problem.toString().contains("a heading that some file has"));
  }

  @Test
  void headings_cut_short_with_dots_are_known() throws IOException {
    Path file =
        sheet(
            """
            Variedad;Patrón;Fecha inj.;Temp. almac. (°F);Diám. púa (mm);Hechos;Prendidos
            Orrin;Pellin;14/03/2024;39,2;6,5;10;6
            Corvane;Pellin;15/03/2024;41,0;7,0;12;9
            """);
    String json = DictionaryProposal.of(List.of(file)).json();
    assertThat(json.replaceAll("\\s+", ""))
        .contains(
            "\"graft_date\":{\"from\":\"Fechainj.\",\"dates\":\"d/M/yyyy\"}",
            "\"storage_temp_c\":{\"from\":\"Temp.almac.(°F)\",\"unit\":\"F\"}",
            "\"scion_diameter_mm\":\"Diám.púa(mm)\"");
  }

  @Test
  void a_heading_cut_short_that_may_be_two_is_asked() throws IOException {
    Path file = sheet("variety,stock,scion d.,made,took\nOrrin,Pellin,6,10,6\n");
    assertThat(DictionaryProposal.of(List.of(file)).json())
        .as("two letters are too few to tell")
        .doesNotContain("scion_diameter_mm");
  }

  @Test
  void a_temperature_taken_for_that_of_the_wood_keeps_its_unit() throws IOException {
    Path file = sheet("variety,stock,°F cold cellar,made,took\nOrrin,Pellin,39,10,6\n");
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    proposal.open().get(0).settle(0);
    GraftRecords records =
        RecordsReader.defaults()
            .withDictionary(SheetDictionary.parse("d.json", proposal.json()))
            .read(file);
    assertThat(records.frame().doubleColumn("storage_temp_c").get(0)).isCloseTo(3.9, within(0.02));
  }

  @Test
  void three_spellings_of_a_name_are_two_questions() throws IOException {
    Path file =
        sheet(
            """
            variety,stock,made,took
            QUESSEL,Pellin,10,6
            quesel,Pellin,10,6
            Quessel,Pellin,10,7
            Quessel,Varric,9,3
            """);
    assertThat(DictionaryProposal.of(List.of(file)).questions())
        .hasSize(2)
        .allMatch(question -> question.contains("may be \"Quessel\" (2 times)"));
  }

  @Test
  void counting_days_are_known_by_their_letter() throws IOException {
    Path file =
        sheet(
            """
            Variété,Porte-greffe,Nb greffés,Reprises 30 j,Reprises 90 j
            Belcarme,Franc,12,10,9
            Corvane,Franc,10,6,5
            """);
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions())
        .singleElement()
        .asString()
        .contains("[Reprises 30 j, Reprises 90 j] look like counts at stated days");
    proposal.open().get(0).settle(0);
    assertThat(read(proposal.json(), file).takes()).isEqualTo(14);
  }

  @Test
  void a_word_for_totals_among_days_is_no_day() throws IOException {
    Path file =
        sheet(
            """
            Sorte,Unterlage,Datum,Stück,angew.
            Orrin,Pellin,12.4.24,15,11
            Bexley,Varric,13.4.24,20,9
            ,,Summe:,35,20
            """);
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions()).isEmpty();
    GraftRecords records = read(proposal.json(), file);
    assertThat(records.grafts()).isEqualTo(35);
    assertThat(records.frame().dateColumn("graft_date").get(0))
        .isEqualTo(LocalDate.of(2024, 4, 12));
    assertThat(records.provenance().rowsSetAside()).isEqualTo(1);
  }

  // Results whose heading and values disagree

  @Test
  void shares_under_a_heading_in_percent_are_shares_and_asked_about() throws IOException {
    Path file = sheet("Variety,Stock,Made,Take %\nA,B,20,0.85\nA,C,20,0.75\nB,B,20,1\nB,C,20,0\n");
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.json()).contains("\"unit\": \"share\"");
    assertThat(proposal.questions()).singleElement().asString().contains("taken for shares");
    assertThat(read(proposal.json(), file).takes()).isEqualTo(17 + 15 + 20);
    proposal.open().get(0).settle(1);
    assertThat(proposal.json()).contains("\"unit\": \"percent\"");
  }

  @Test
  void shares_in_number_cells_are_shares_too() throws IOException {
    Path file = folder.resolve("shares.xlsx");
    try (OutputStream out = Files.newOutputStream(file);
        Workbook book = new Workbook(out, "Taketally test", "1.0")) {
      Worksheet sheet = book.newWorksheet("2025");
      List<Object> cells =
          List.of("Variety", "Stock", "Made", "Take %", "A", "B", 20, 0.85, "A", "C", 20, 1);
      for (int i = 0; i < cells.size(); i++) {
        if (cells.get(i) instanceof Number number) {
          sheet.value(i / 4, i % 4, number);
        } else {
          sheet.value(i / 4, i % 4, cells.get(i).toString());
        }
      }
    }
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.json()).contains("\"unit\": \"share\"");
    assertThat(read(proposal.json(), file).takes()).isEqualTo(37);
  }

  @Test
  void ones_and_noughts_among_words_are_marks() throws IOException {
    Path file =
        sheet("Variety,Stock,Took?\nA,B,1\nA,C,1\nB,B,0\nB,C,0\nA,B,yes\nA,B,no\nA,B,gone\n");
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions()).singleElement().asString().contains("\"gone\"");
    GraftRecords records = read(proposal.json(), file);
    assertThat(records.grafts()).isEqualTo(6);
    assertThat(records.takes()).isEqualTo(3);
    assertThat(proposed("Variety,Stock,Took?\nA,B,yes\nA,C,no\nB,B,yes\nB,C,3\n").questions())
        .singleElement()
        .asString()
        .contains("\"3\"");
  }

  @Test
  void percentages_and_counts_without_a_column_of_grafts_ask_for_one() throws IOException {
    for (String takes : List.of("85,75,100", "8,7,9")) {
      String[] each = takes.split(",");
      DictionaryProposal proposal =
          proposed(
              "Variety,Stock,Take %%\nA,B,%s\nA,C,%s\nB,B,%s\n"
                  .formatted((Object[]) each)
                  .replace(takes.startsWith("8,") ? " %" : "?", ""));
      assertThat(proposal.questions())
          .singleElement()
          .asString()
          .contains("no heading seems to hold how many grafts the takes are out of");
    }
    assertThat(proposed("Variety,Stock,Take\nA,B,8 of 10\nA,C,7 of 10\n").questions()).isEmpty();
  }

  @Test
  void a_sheet_longer_than_was_looked_at_says_so_once() throws IOException {
    String rows = "Orrin,Pellin,10,9\n".repeat(20_001);
    DictionaryProposal proposal = proposed("Variety,Stock,Made,Alive\n" + rows);
    assertThat(proposal.reasons())
        .filteredOn(reason -> reason.contains("only its first 20,000 rows were looked at"))
        .hasSize(1);
  }

  @Test
  void a_file_named_twice_is_looked_at_once() throws IOException {
    Path file = sheet("Variety,Stock,Alive\nOrrin,Pellin,x\nOrrin,Halden,\n");
    DictionaryProposal twice = DictionaryProposal.of(List.of(file, folder.resolve("./kept.csv")));
    assertThat(twice.json()).isEqualTo(DictionaryProposal.of(List.of(file)).json());
    assertThat(twice.sheets()).hasSize(1);
  }

  /** A dictionary tells files apart by their names. */
  @Test
  void files_of_one_name_kept_in_different_ways_are_asked_about() throws IOException {
    Path one = Files.createDirectory(folder.resolve("2024")).resolve("kept.csv");
    Path other = Files.createDirectory(folder.resolve("2025")).resolve("kept.csv");
    Files.writeString(one, "Variety,Stock,Made,Alive\nOrrin,Pellin,10,9\n");
    Files.writeString(other, "Sorte,Unterlage,grafts,takes\nOrrin,Pellin,10,8\n");
    assertThat(DictionaryProposal.of(List.of(one, other)).questions())
        .singleElement()
        .asString()
        .contains("another file is called kept.csv too", "rename one of them");
  }

  @Test
  void the_word_most_like_comes_first() throws IOException {
    DictionaryProposal proposal =
        proposed("cultivar,rootstock,bud_stage,grafts,takes\nOrrin,Pellin,flushd,10,9\n");
    assertThat(proposal.open().get(0).choices().get(0)).isEqualTo("flushed");
  }

  @Test
  void a_column_made_from_others_is_none_of_the_users_own() throws IOException {
    DictionaryProposal proposal =
        proposed("cultivar,rootstock,storage_days,Shelf,grafts,takes\nOrrin,Pellin,12,b,10,9\n");
    assertThat(proposal.reasons())
        .anyMatch(reason -> reason.endsWith("columns of your own, kept as they are: \"Shelf\""));
  }

  /** The proposal was of no use, and nothing was open. */
  @Test
  void headings_over_several_columns_are_asked_about() throws IOException {
    DictionaryProposal proposal =
        proposed(",,2023,,2024,\nVariety,Stock,made,alive,made,alive\nOrrin,Pellin,12,9,10,8\n");
    assertThat(proposal.questions())
        .singleElement()
        .asString()
        .contains("\"made\", \"alive\" stand over several columns", "a heading of its own");
  }

  @Test
  void a_worksheet_of_notes_is_not_asked_about() throws IOException {
    Path file = folder.resolve("club.xlsx");
    try (OutputStream out = Files.newOutputStream(file);
        Workbook book = new Workbook(out, "Taketally test", "1.0")) {
      Worksheet records = book.newWorksheet("2025");
      String[][] rows = {{"Variety", "Stock", "Alive"}, {"Orrin", "Pellin", "x"}};
      for (int row = 0; row < rows.length; row++) {
        for (int column = 0; column < rows[row].length; column++) {
          records.value(row, column, rows[row][column]);
        }
      }
      Worksheet notes = book.newWorksheet("to buy");
      notes.value(0, 0, "Tape");
      notes.value(1, 0, "Knives");
    }
    DictionaryProposal proposal = DictionaryProposal.of(List.of(file));
    assertThat(proposal.questions()).isEmpty();
    assertThat(proposal.reasons())
        .anyMatch(reason -> reason.contains("to buy: it has hardly a heading that is known"));
    assertThatThrownBy(() -> RecordsReader.defaults().read(List.of(file)))
        .hasMessageContaining("sheet 2025 line 1: found \"Variety, Stock, Alive\"");
  }

  @Test
  void a_cross_is_a_failure() throws IOException {
    assertThat(proposed("cultivar,rootstock,took\nA,B,\u2713\nA,C,\u2717\n").questions()).isEmpty();
  }
}
