package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.RecordsUnreadable;

/** Days by person, counts at stated days, names written once for many rows. */
class KeptWaysTest {

  @TempDir private Path folder;

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private static RecordsReader reader(String dictionary) {
    return RecordsReader.defaults()
        .withToday(LocalDate.of(2026, 11, 1))
        .withDictionary(SheetDictionary.parse("dictionary.json", dictionary));
  }

  private static final String TWO_HANDS =
      """
      Variety,Stock,Who,Date,outcome
      Corvane,Pellin,Ann,04/03/2026,taken
      Corvane,Pellin,Bo,04/03/2026,failed
      Corvane,Varric,bo,03/25/2026,taken
      Orrin,Varric,Cy,04/03/2026,taken
      Orrin,Varric,Cy,2026-03-09,taken
      Orrin,Pellin,Ann,,taken
      """;

  @Test
  void each_person_writes_days_in_a_way_of_their_own() throws IOException {
    GraftRecords records =
        reader(
                """
                {"columns": {"cultivar": "Variety", "rootstock": "Stock", "grafter": "Who", "graft_date": "Date"},
                 "dates_by": {"column": "Who", "patterns": {"Ann": "dd/MM/yyyy", "Bo": "MM/dd/yyyy"}}}
                """)
            .read(file("sheet.csv", TWO_HANDS));
    assertThat(records.frame().dateColumn("graft_date").asList())
        .containsExactly(
            LocalDate.of(2026, 3, 4),
            LocalDate.of(2026, 4, 3),
            LocalDate.of(2026, 3, 25),
            null,
            LocalDate.of(2026, 3, 9),
            null);
    assertThat(records.problems())
        .anySatisfy(
            problem -> {
              assertThat(problem.line()).isEqualTo(5);
              assertThat(problem.sentence()).contains("4 March 2026", "3 April 2026");
            });
  }

  @Test
  void says_which_column_tells_who_wrote_is_missing() throws IOException {
    Path sheet = file("sheet.csv", TWO_HANDS);
    assertThatThrownBy(
            () ->
                reader(
                        """
                        {"columns": {"cultivar": "Variety", "rootstock": "Stock"},
                         "dates_by": {"column": "Whom", "patterns": {"Ann": "dd/MM/yyyy"}}}
                        """)
                    .read(sheet))
        .hasMessageContaining("a heading \"Whom\", which the dictionary names under dates_by");
    assertThatThrownBy(() -> reader("{\"dates_by\": {\"column\": \"Who\"}}"))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("dates_by");
    assertThatThrownBy(
            () -> reader("{\"dates_by\": {\"column\": \"Who\", \"patterns\": {\"A\": \"dd/xx\"}}}"))
        .hasMessageContaining("dates_by.patterns.A");
  }

  private static final String COUNTED_TWICE =
      """
      Label,Variety,Stock,Made,alive 30 d,alive 90 d
      a1,Corvane,Pellin,10,8,6
      a2,Corvane,Varric,10,7,7
      a3,Orrin,Pellin,5,4,
      a4,Orrin,Varric,5,,
      """;
  private static final String COUNTS =
      """
      {"columns": {"record": "Label", "cultivar": "Variety", "rootstock": "Stock", "grafts": "Made"},
       "blank_result": "unassessed",
       "counts": [{"days": 90, "alive": "alive 90 d"}, {"days": 30, "alive": "alive 30 d"}]}
      """;

  @Test
  void counts_at_stated_days_need_no_dates() throws IOException {
    Path sheet = file("sheet.csv", COUNTED_TWICE);
    RecordsReader reader = reader(COUNTS);
    GraftRecords records = reader.read(sheet);
    assertThat(records.frame().rowCount()).isEqualTo(4);
    assertThat(records.grafts()).isEqualTo(25);
    assertThat(records.takes()).isEqualTo(17);
    assertThat(records.frame().doubleColumn("days_to_assessment").asList())
        .containsExactly(90.0, 90.0, 30.0, null);
    Assessments counts = reader.assessments(List.of(sheet), records);
    assertThat(counts.setAside().size()).isZero();
    assertThat(counts.histories()).hasSize(3);
    assertThat(counts.histories().get(0).days()).containsExactly(30, 90);
    assertThat(counts.histories().get(0).alive()).containsExactly(8, 6);
    assertThat(counts.histories().get(2).alive()).containsExactly(4);
  }

  @Test
  void a_count_above_the_grafts_is_set_aside_and_comes_back_repaired() throws IOException {
    Path sheet = file("sheet.csv", COUNTED_TWICE.replace("10,7,7", "10,7,17"));
    RecordsReader reader = reader(COUNTS);
    GraftRecords records = reader.read(sheet);
    assertThat(records.setAside().size()).isEqualTo(1);
    Path repaired = file("set-aside.csv", records.setAside().csv().replace("17", "7"));
    GraftRecords both = reader.read(sheet, repaired);
    assertThat(both.grafts()).isEqualTo(25);
    assertThat(both.takes()).isEqualTo(17);
  }

  @Test
  void says_what_counts_should_be() {
    assertThatThrownBy(() -> reader("{\"counts\": [{\"days\": \"soon\", \"alive\": \"x\"}]}"))
        .hasMessageContaining("whole days after grafting");
    assertThatThrownBy(
            () ->
                reader(
                    "{\"counts\": [{\"days\": 30, \"alive\": \"x\"}, {\"days\": 30, \"alive\":"
                        + " \"y\"}]}"))
        .hasMessageContaining("each day once");
    assertThatThrownBy(() -> reader("{\"counts\": [{\"day\": 30, \"alive\": \"x\"}]}"))
        .hasMessageContaining("did you mean days?");
    Path absent = folder.resolve("sheet.csv");
    assertThatThrownBy(
            () -> {
              Files.writeString(absent, COUNTED_TWICE.replace("alive 90 d", "alive 90d"));
              reader(COUNTS).read(absent);
            })
        .hasMessageContaining("\"alive 90 d\", which the dictionary names under counts");
  }

  private static final String WRITTEN_ONCE =
      """
      Variety,Stock,grafts,takes
      Corvane,Pellin,10,8
      ,Varric,10,7
      ,,5,4
      Orrin,Pellin,5,3
      ,Varric,5,2
      Total,,35,24
      """;

  @Test
  void a_name_written_once_stands_for_the_rows_below() throws IOException {
    Path sheet = file("sheet.csv", WRITTEN_ONCE);
    String columns = "{\"columns\": {\"cultivar\": \"Variety\", \"rootstock\": \"Stock\"}";
    assertThat(reader(columns + "}").read(sheet).setAside().size()).isEqualTo(4);
    GraftRecords records =
        reader(columns + ", \"fill_down\": [\"Variety\", \"Stock\"]}").read(sheet);
    assertThat(records.frame().stringColumn("cultivar").asList())
        .containsExactly("Corvane", "Corvane", "Corvane", "Orrin", "Orrin");
    assertThat(records.frame().stringColumn("rootstock").asList())
        .containsExactly("Pellin", "Varric", "Varric", "Pellin", "Varric");
    assertThat(records.grafts()).isEqualTo(35);
    assertThat(records.setAside().size()).isEqualTo(1);
    assertThat(records.summary().count(ProblemKind.SUMMARY_ROW)).isEqualTo(1);
    assertThatThrownBy(() -> reader(columns + ", \"fill_down\": [\"Varieti\"]}").read(sheet))
        .hasMessageContaining("\"Varieti\", which the dictionary names under fill_down");
  }

  /** A sum under a column of names is no batch of the name above it. */
  @Test
  void a_sum_isnt_filled_in() throws IOException {
    Path sheet = file("sheet.csv", WRITTEN_ONCE.replace("Total,,35,24", ",,35,24"));
    GraftRecords records =
        reader(
                "{\"columns\": {\"cultivar\": \"Variety\", \"rootstock\": \"Stock\"},"
                    + " \"fill_down\": [\"Variety\", \"Stock\"]}")
            .read(sheet);
    assertThat(records.grafts()).isEqualTo(35);
    assertThat(records.setAside().size()).isEqualTo(1);
  }

  @Test
  void a_line_break_in_a_cell_doesnt_break_the_sentence() throws IOException {
    Path sheet =
        file(
            "sheet.csv",
            "cultivar,rootstock,outcome\nCorvane,Pellin,\"ta\nken\"\nOrrin,Pellin,taken\n");
    assertThat(reader("{}").read(sheet).problems().get(0).sentence())
        .contains("found \"ta↵ken\"")
        .doesNotContain("\n");
  }

  private static final String WITH_A_SLIP =
      """
      cultivar,rootstock,grafts,takes
      Corvane,Pellin,10,8
      Corvane,Varric,10,17
      Orrin,Pellin,10,6
      """;

  @Test
  void a_repaired_row_counts_once_however_many_files_hold_it() throws IOException {
    Path sheet = file("sheet.csv", WITH_A_SLIP);
    GraftRecords records = reader("{}").read(sheet);
    Path first = file("set-aside.csv", records.setAside().csv().replace("17", "7"));
    assertThat(reader("{}").read(sheet, first).takes()).isEqualTo(21);
    Path second = file("set-aside-2.csv", records.setAside().csv().replace("17", "6"));
    GraftRecords all = reader("{}").read(sheet, first, second);
    assertThat(all.grafts()).isEqualTo(30);
    assertThat(all.takes()).isEqualTo(21);
    assertThat(all.problems())
        .anySatisfy(
            problem ->
                assertThat(problem.sentence())
                    .contains("set-aside-2.csv", "each row once", "set-aside.csv line 2"));
    Path mended = file("sheet.csv", WITH_A_SLIP.replace("17", "7"));
    assertThat(reader("{}").read(mended, first).grafts()).isEqualTo(30);
    assertThat(reader("{}").read(first, mended).grafts()).isEqualTo(30);
    assertThat(reader("{}").read(mended).grafts()).isEqualTo(30);
  }

  @Test
  void a_repaired_row_is_known_by_the_file_it_came_from() throws IOException {
    Files.createDirectory(folder.resolve("a"));
    Path one = file("a/sheet.csv", WITH_A_SLIP);
    Path aside = file("set-aside.csv", reader("{}").read(one).setAside().csv().replace("17", "7"));
    Files.createDirectory(folder.resolve("b"));
    Path other = file("b/sheet.csv", WITH_A_SLIP.replace("17", "1"));
    GraftRecords both = reader("{}").read(one, other, aside);
    assertThat(both.grafts()).isEqualTo(60);
    assertThat(both.takes()).isEqualTo(8 + 6 + 8 + 1 + 6 + 7);
  }

  /** 1 alive and 9 dead was read as 1 of 1. */
  @Test
  void counts_of_takes_without_grafts_are_no_single_grafts() throws IOException {
    String alive =
        "cultivar,rootstock,takes,Dead\nOrrin,Pellin,8,2\nOrrin,Halden,1,9\nBexley,Halden,0,9\n";
    GraftRecords records = reader("{}").read(file("sheet.csv", alive));
    assertThat(records.grafts()).isZero();
    assertThat(records.setAside().size()).isEqualTo(3);
    assertThat(records.problems().get(1).sentence())
        .contains("line 3, column takes: found \"1\", expected how many grafts it is out of");
    assertThat(reader("{}").read(file("sheet.csv", alive.replace(",8,", ",1,"))).grafts())
        .isEqualTo(3);
    assertThat(
            reader("{\"constants\": {\"grafts\": \"10\"}}").read(file("sheet.csv", alive)).takes())
        .isEqualTo(9);
  }

  /** A German day, with a dot behind it, was said to be no day that exists. */
  @Test
  void a_day_with_the_name_of_its_month_names_its_pattern() throws IOException {
    String days =
        """
        cultivar,rootstock,outcome,graft_date
        Orrin,Pellin,taken,4. März 2025
        Orrin,Pellin,taken,6th March
        """;
    GraftRecords records = reader("{}").read(file("sheet.csv", days));
    assertThat(records.problems().get(0).sentence())
        .contains("this would be 4 March 2025", "\"dates\": \"d. MMM yyyy\"");
    assertThat(records.problems().get(1).sentence())
        .contains("found \"6th March\", expected a date as yyyy-MM-dd; correct the date");
  }
}
