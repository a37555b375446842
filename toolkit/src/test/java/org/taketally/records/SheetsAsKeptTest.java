package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.taketally.records.dictionary.BlankResult;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.RecordsUnreadable;

/** Sheets as people keep them: nothing about them is guessed without a word. */
class SheetsAsKeptTest {

  private static final RecordsReader READER =
      RecordsReader.defaults()
          .withCrop(CropProfiles.named("avocado"))
          .withToday(LocalDate.of(2026, 11, 25));

  @TempDir Path folder;

  private GraftRecords read(String text) throws IOException {
    return read(text, "{}");
  }

  private GraftRecords read(String text, String dictionary) throws IOException {
    Path file = Files.writeString(folder.resolve("sheet.csv"), text);
    return READER.withDictionary(SheetDictionary.parse("d.json", dictionary)).read(List.of(file));
  }

  private List<String> said(GraftRecords records, ProblemKind kind) {
    return records.summary().groups().stream()
        .filter(group -> group.kind() == kind)
        .flatMap(group -> group.first().stream())
        .map(problem -> problem.sentence().replace(folder + "/", ""))
        .toList();
  }

  private static void refuses(String dictionary, String sentence) {
    assertThatThrownBy(() -> SheetDictionary.parse("d.json", dictionary))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessage(sentence);
  }

  // Blank results

  private static final String MARKS =
      "cultivar,rootstock,outcome\n" + "Orrin,Pellin,x\n".repeat(6) + "Orrin,Halden,\n".repeat(4);
  private static final String MARKS_SAY =
      "\"columns\": {\"outcome\": {\"same\": {\"taken\": [\"x\"]}}}";

  @Test
  void many_blank_results_ask_what_a_blank_means_with_both_counts() throws IOException {
    GraftRecords records = read(MARKS, "{" + MARKS_SAY + "}");
    assertThat(said(records, ProblemKind.BLANK_RESULTS))
        .containsExactly(
            "sheet.csv, column outcome: found \"4 of 10 results blank\", expected to be told what a"
                + " blank means; say it in the dictionary: \"blank_result\": \"unassessed\" (then 6"
                + " of 6 grafts took, 100 %) or \"blank_result\": \"failed\" (then 6 of 10 grafts"
                + " took, 60 %)");
    assertThat(records.check().unsettled()).hasSize(1);
  }

  @Test
  void blank_results_are_read_as_the_dictionary_says() throws IOException {
    GraftRecords failed = read(MARKS, "{\"blank_result\": \"failed\", " + MARKS_SAY + "}");
    assertThat(failed.grafts()).isEqualTo(10);
    assertThat(failed.takes()).isEqualTo(6);
    assertThat(failed.check().unsettled()).isEmpty();
    assertThat(failed.summary().count(ProblemKind.BLANK_AS_FAILED)).isEqualTo(4);
    GraftRecords unassessed = read(MARKS, "{\"blank_result\": \"unassessed\", " + MARKS_SAY + "}");
    assertThat(unassessed.grafts()).isEqualTo(6);
    assertThat(unassessed.check().unsettled()).isEmpty();
    assertThat(unassessed.summary().count(ProblemKind.NO_RESULT)).isZero();
  }

  @Test
  void a_tenth_of_blanks_or_less_asks_nothing() throws IOException {
    GraftRecords records =
        read("cultivar,rootstock,grafts,takes\n" + "A,B,10,4\n".repeat(9) + "A,B,10,\n");
    assertThat(said(records, ProblemKind.BLANK_RESULTS)).isEmpty();
    assertThat(said(records, ProblemKind.NO_RESULT)).hasSize(1);
  }

  /** A word for "not recorded" was written by someone: it is no failure. */
  @Test
  void a_word_for_not_recorded_and_a_planned_graft_are_no_failures() throws IOException {
    GraftRecords records =
        read(
            """
            cultivar,rootstock,graft_date,outcome
            A,B,2026-01-01,
            A,B,2026-01-01,NA
            A,B,2027-01-01,
            """,
            "{\"blank_result\": \"failed\", \"missing\": [\"NA\"]}");
    assertThat(records.grafts()).isEqualTo(1);
    assertThat(records.takes()).isZero();
  }

  @Test
  void the_reader_may_say_what_blanks_mean() throws IOException {
    Path file = Files.writeString(folder.resolve("marks.csv"), MARKS.replace(",x", ",taken"));
    GraftRecords records = READER.withBlankResult(BlankResult.FAILED).read(List.of(file));
    assertThat(records.grafts()).isEqualTo(10);
  }

  // Dictionaries that would be read and not used

  @Test
  void a_dictionary_entry_without_effect_is_refused() {
    refuses(
        "{\"columns\": {\"outcome\": {\"same\": {\"failed\": [\"\"]}}}}",
        "d.json, column columns.outcome.same: found \"a blank as a spelling of failed\", expected"
            + " words that stand in the sheet; say what a blank result means with"
            + " \"blank_result\": \"failed\", \"taken\" or \"unassessed\" beside columns");
    refuses(
        "{\"columns\": {\"grafts\": {\"same\": {\"1\": [\"x\"]}}}}",
        "d.json, column columns.grafts.same: found \"{\"1\":[\"x\"]}\", expected nothing: grafts"
            + " holds counts; take it out, or put it under the column it belongs to");
    refuses(
        "{\"columns\": {\"cultivar\": {\"dates\": \"dd/MM/yyyy\"}}}",
        "d.json, column columns.cultivar.dates: found \"\"dd/MM/yyyy\"\", expected nothing:"
            + " cultivar holds names; take it out, or put it under the column it belongs to");
    refuses(
        "{\"columns\": {\"outcome\": {\"missing\": [\"?\"], \"same\": {\"unassessed\": [\"?\"]}}}}",
        "d.json, column columns.outcome.same: found \"? as a spelling of unassessed and under"
            + " missing\", expected one meaning; take it out of one of the two");
    refuses(
        "{\"blank_result\": \"dead\"}",
        "d.json, column blank_result: found \"dead\", expected \"unassessed\", \"failed\" or"
            + " \"taken\"; write failed where only takes were written down, taken where only"
            + " failures were, unassessed where nobody looked");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {"columns": {"grafter": "Grafted bye"}} | columns.grafter | Grafted bye | Grafted by
          {"ignore": ["Grafted bi"]}              | ignore          | Grafted bi  | Grafted by
          {"files": {"shet.csv": {}}}             | files           | shet.csv    | sheet.csv
          """)
  void a_slip_in_a_name_of_the_sheet_is_an_error(
      String dictionary, String where, String found, String near) {
    assertThatThrownBy(
            () -> read("cultivar,rootstock,Grafted by,outcome\nA,B,Jo,taken\n", dictionary))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessage(
            "d.json, column %s: found \"%s\", expected a name that some file has; did you mean"
                + " \"%s\"?",
            where, found, near);
  }

  // Totals

  @Test
  void totals_are_found_by_arithmetic_in_any_language() throws IOException {
    GraftRecords records =
        read(
            """
            cultivar;rootstock;grafts;takes
            Orrin;Pellin;50;20
            Orrin;Halden;60;31
            Orrin;Summe;110;51
            Bexley;Pellin;95;40
            Bexley;Halden;100;62
            Bexley;Summe;195;102
            Gesamt;alle;305;153
            """);
    assertThat(records.grafts()).isEqualTo(305);
    assertThat(records.takes()).isEqualTo(153);
    assertThat(said(records, ProblemKind.SUMMARY_ROW)).hasSize(3);
  }

  /** A small batch of another stock on the same day may come to the sum of the two above. */
  @Test
  void a_dated_batch_of_another_stock_is_no_total() throws IOException {
    GraftRecords records =
        read(
            """
            cultivar,rootstock,grafter,graft_date,grafts,takes
            Orrin,Halden seedling,Maud,2024-03-05,2,0
            Orrin,Ostrey,Maud,2024-03-05,2,1
            Orrin,Varric,Maud,2024-03-05,4,1
            """);
    assertThat(records.grafts()).isEqualTo(8);
  }

  @Test
  void a_small_batch_of_another_stock_is_no_total() throws IOException {
    GraftRecords records =
        read(
            """
            cultivar,rootstock,grafts,takes
            Orrin,Pellin,2,0
            Orrin,Ostrey,2,1
            Orrin,Varric,4,1
            """);
    assertThat(records.grafts()).isEqualTo(8);
  }

  @Test
  void totals_with_blanks_count_rows_set_aside_too() throws IOException {
    GraftRecords records =
        read(
            """
            cultivar,rootstock,graft_date,grafts,takes
            Orrin,Pellin,2026-03-01,50,20
            Orrin,,2026-03-04,60,31
            TODO,Pellin,,110,51
            """);
    assertThat(said(records, ProblemKind.SUMMARY_ROW))
        .containsExactly(
            "sheet.csv line 4, column grafts: found \"51 of 110, the sum of the 2 rows above\","
                + " expected one graft or batch in each row; take rows of totals out of the sheet;"
                + " if it is a batch of its own, read it from the file of rows set aside");
    assertThat(records.grafts()).isEqualTo(50);
  }

  /** Small batches come to such sums by chance. */
  @Test
  void a_batch_that_happens_to_be_a_sum_is_kept() throws IOException {
    GraftRecords records =
        read(
            """
            cultivar,rootstock,grafts,takes
            Orrin,Pellin,5,2
            Bexley,Halden,5,3
            Corvane,Halden,10,5
            """);
    assertThat(records.grafts()).isEqualTo(20);
  }

  @Test
  void a_subtotal_under_the_names_of_its_rows_is_asked_about() throws IOException {
    GraftRecords records =
        read("cultivar,rootstock,grafts,takes\nA,B,10,4\nA,B,12,3\nA,B,9,7\nA,B,31,14\nA,C,5,5\n");
    assertThat(said(records, ProblemKind.LOOKS_LIKE_SUMMARY)).hasSize(1);
  }

  // Words

  @ParameterizedTest
  @CsvSource({"Y,taken", "yes,taken", "alive,taken", "dead,failed", "muerto,failed", "tot,failed"})
  void the_remedy_for_a_word_is_the_right_way_round(String word, String means) throws IOException {
    GraftRecords records = read("cultivar,rootstock,outcome\nA,B," + word + "\nA,B,taken\n");
    assertThat(said(records, ProblemKind.NOT_ALLOWED).get(0))
        .endsWith("in the dictionary: \"same\": {\"%s\": [\"%s\"]}".formatted(means, word));
  }

  @Test
  void an_unknown_word_leaves_the_choice() throws IOException {
    GraftRecords records = read("cultivar,rootstock,outcome\nA,B,qq\nA,B,taken\n");
    assertThat(said(records, ProblemKind.NOT_ALLOWED).get(0))
        .endsWith(
            "\"same\": {\"failed\": [\"qq\"]} or \"same\": {\"taken\": [\"qq\"]} or \"same\":"
                + " {\"unassessed\": [\"qq\"]}");
  }

  // Days

  @Test
  void days_of_two_orders_in_one_column_are_never_read_as_other_months() throws IOException {
    GraftRecords records =
        read(
            """
            cultivar,rootstock,graft_date,outcome
            A,B,17/03/2026,taken
            A,B,04/03/2026,taken
            A,B,03/03/2026,taken
            A,B,03/25/2026,taken
            A,B,03/26/2026,taken
            """,
            "{\"dates\": \"dd/MM/yyyy\"}");
    assertThat(said(records, ProblemKind.AMBIGUOUS_DATE))
        .containsExactly(
            "sheet.csv line 3, column graft_date: found \"04/03/2026\", expected a day that reads"
                + " one way only; this could be 4 March 2026 (dd/MM/yyyy) or 3 April 2026"
                + " (MM/dd/yyyy), because \"03/25/2026\" on line 5 reads only as MM/dd/yyyy; if"
                + " that line is a slip, correct it there and read the sheet again; else write the"
                + " days of this column as yyyy-MM-dd; read as not recorded until then");
    assertThat(records.frame().dateColumn("graft_date").asList())
        .containsExactly(LocalDate.of(2026, 3, 17), null, LocalDate.of(2026, 3, 3), null, null);
  }

  @Test
  void one_day_the_other_way_round_passes_for_a_slip_and_what_hangs_on_it_is_said()
      throws IOException {
    GraftRecords records =
        read(
            """
            cultivar,rootstock,graft_date,outcome
            A,B,17/03/2026,taken
            A,B,04/03/2026,taken
            A,B,03/25/2026,taken
            """,
            "{\"dates\": \"dd/MM/yyyy\"}");
    assertThat(said(records, ProblemKind.DAYS_OF_TWO_ORDERS).get(0))
        .startsWith("sheet.csv line 4, column graft_date: found \"03/25/2026\"")
        .contains("1 others (04/03/2026 on line 3 is the first) read both ways");
    assertThat(records.frame().dateColumn("graft_date").asList())
        .containsExactly(LocalDate.of(2026, 3, 17), LocalDate.of(2026, 3, 4), null);
  }

  // Crops

  @Test
  void no_crop_is_assumed_and_that_is_said() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("cherry.csv"),
            "cultivar,rootstock,storage_temp_c,outcome\nA,B,1,taken\n");
    GraftRecords records = RecordsReader.defaults().read(List.of(file));
    assertThat(said(records, ProblemKind.NO_CROP))
        .containsExactly(
            "cherry.csv: found \"no crop named\"; limits that differ between crops (storage, days"
                + " to the count, grafts in a row, take) weren't checked");
    assertThat(records.summary().count(ProblemKind.STORED_TOO_COLD)).isZero();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          take_low,5,share,x            | line 4: found "5", expected a number from 0 to 1 (share) for take_low; write 5 % as 0.05
          assess_early,-3,days,x        | line 4: found "-3", expected a number from 0 to 3650 (days) for assess_early; count the days
          storage_temp_max,x,°C,x       | line 4: found "x", expected a number from -40 to 50 (°C) for storage_temp_max; convert it to degrees Celsius
          """)
  void a_crop_profile_with_a_value_that_cannot_be_is_refused(String line, String message)
      throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("crop.csv"),
            "item,value,unit,source\ncrop,plum,text,name\nversion,1,text,name\n" + line + "\n");
    assertThatThrownBy(() -> CropProfiles.load(file)).hasMessage(file + " " + message);
  }

  @Test
  void a_crop_profile_whose_limits_are_crossed_is_refused() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("crop.csv"),
            """
            item,value,unit,source
            crop,plum,text,name
            version,1,text,name
            take_low,0.9,share,x
            take_high,0.5,share,x
            """);
    assertThatThrownBy(() -> CropProfiles.load(file))
        .hasMessageContaining("take_low 0.9, take_high 0.5");
  }

  // Shares

  @Test
  void a_share_of_one_is_not_one_take() throws IOException {
    GraftRecords records =
        read("cultivar,rootstock,grafts,takes\nA,B,50,0.98\nA,C,50,1\nA,D,50,1.0\nA,E,50,0\n");
    assertThat(said(records, ProblemKind.AMBIGUOUS_NUMBER))
        .hasSize(2)
        .first()
        .asString()
        .isEqualTo(
            "sheet.csv line 3, column takes: found \"1\", expected a count that reads one way only;"
                + " this could be 1 of 50 or all 50, because \"0.98\" on line 2 is a share; write"
                + " the count, or say \"unit\": \"share\" for this column in the dictionary");
    assertThat(read("cultivar,rootstock,grafts,takes\nA,C,50,1.0\n").grafts()).isZero();
    assertThat(read("cultivar,rootstock,grafts,takes\nA,C,50,1.0\nA,D,50,12.0\n").takes())
        .isEqualTo(13);
  }

  @Test
  void shares_are_read_where_the_dictionary_says_so() throws IOException {
    GraftRecords records =
        read(
            "cultivar,rootstock,grafts,takes\nA,B,50,0.98\nA,C,50,1\nA,D,50,0\nA,E,50,1.2\n",
            "{\"columns\": {\"takes\": {\"unit\": \"share\"}}}");
    assertThat(records.takes()).isEqualTo(99);
    assertThat(said(records, ProblemKind.OUT_OF_RANGE).get(0))
        .contains("expected a share from 0 to 1");
  }

  // Batches

  @Test
  void the_records_know_which_columns_group() throws IOException {
    GraftRecords records =
        read(
            "cultivar,rootstock,Lot,Fridge,outcome\nA,B,1,2,taken\nA,B,2,2,failed\n",
            "{\"batches\": [\"Lot\"]}");
    assertThat(records.batches()).containsExactly("Lot");
    assertThat(records.frame().column("Lot").type().name()).isEqualTo("STRING");
    assertThat(records.frame().column("Fridge").type().name()).isEqualTo("DOUBLE");
    assertThatThrownBy(
            () -> read("cultivar,rootstock,Lot,outcome\nA,B,1,taken\n", "{\"batches\": [\"Lod\"]}"))
        .hasMessage(
            "d.json, column batches: found \"Lod\", expected a column that some file has; correct"
                + " the name; did you mean Lot?");
  }

  // Worksheets

  private interface Filling {
    void fill(Worksheet sheet);
  }

  private Path book(Object... namesAndFillings) throws IOException {
    Path file = folder.resolve("club.xlsx");
    try (OutputStream out = Files.newOutputStream(file);
        Workbook book = new Workbook(out, "Taketally test", "1.0")) {
      for (int i = 0; i < namesAndFillings.length; i += 2) {
        ((Filling) namesAndFillings[i + 1]).fill(book.newWorksheet((String) namesAndFillings[i]));
      }
    }
    return file;
  }

  private static Filling rows(String... lines) {
    return sheet -> {
      for (int r = 0; r < lines.length; r++) {
        String[] fields = lines[r].split(",", -1);
        for (int c = 0; c < fields.length; c++) {
          if (fields[c].matches("\\d+")) {
            sheet.value(r, c, Integer.parseInt(fields[c]));
          } else {
            sheet.value(r, c, fields[c]);
          }
        }
      }
    };
  }

  @Test
  void every_worksheet_is_read_and_one_without_records_is_named() throws IOException {
    Path book =
        book(
            "2024",
            rows("cultivar,rootstock,grafts,takes", "A,B,10,4"),
            "2025",
            rows("cultivar,rootstock,grafts,takes", "A,B,20,9"),
            "Phone list",
            rows("who,number", "Jo,12"),
            "empty",
            rows());
    GraftRecords records = READER.read(List.of(book));
    assertThat(records.grafts()).isEqualTo(30);
    assertThat(records.provenance().sources())
        .containsExactly(book + ", sheet 2024", book + ", sheet 2025");
    assertThat(said(records, ProblemKind.SHEET_LEFT_OUT))
        .hasSize(1)
        .first()
        .asString()
        .startsWith("club.xlsx, sheet Phone list: found \"who, number\"");
  }

  @Test
  void a_named_worksheet_is_read_alone_and_the_others_are_named() throws IOException {
    Path book =
        book(
            "2024",
            rows("cultivar,rootstock,grafts,takes", "A,B,10,4"),
            "2025",
            rows("cultivar,rootstock,grafts,takes", "A,B,20,9"));
    GraftRecords records =
        READER
            .withDictionary(SheetDictionary.parse("d", "{\"sheets\": [\"2025\"]}"))
            .read(List.of(book));
    assertThat(records.grafts()).isEqualTo(20);
    assertThat(said(records, ProblemKind.SHEET_NOT_NAMED))
        .containsExactly(
            "club.xlsx: found \"sheet 2024\"; not read, because others are named or it is hidden;"
                + " to read it, name it under \"sheets\" in the dictionary");
    assertThatThrownBy(
            () ->
                READER
                    .withDictionary(SheetDictionary.parse("d", "{\"sheets\": [\"2026\"]}"))
                    .read(List.of(book)))
        .hasMessageContaining("no sheet \"2026\"")
        .hasMessageContaining("did you mean 202");
  }

  /** Each worksheet may have rules of its own, also once its rows were set aside. */
  @Test
  void rows_of_a_worksheet_set_aside_are_read_by_its_rules() throws IOException {
    Path book =
        book(
            "alt",
            rows("Sorte,rootstock,grafts,takes", "A,B,10,14"),
            "neu",
            rows("cultivar,rootstock,grafts,takes", "A,B,20,9"));
    RecordsReader reader =
        READER.withDictionary(
            SheetDictionary.parse(
                "d",
                "{\"files\": {\"club.xlsx, sheet alt\": {\"columns\": {\"cultivar\":"
                    + " \"Sorte\"}}}}"));
    GraftRecords records = reader.read(List.of(book));
    assertThat(records.grafts()).isEqualTo(20);
    Path repaired =
        Files.writeString(
            folder.resolve("set-aside.csv"), records.setAside().csv().replace(",14", ",8"));
    assertThat(reader.read(List.of(repaired)).takes()).isEqualTo(8);
  }

  @Test
  void a_cell_shown_as_a_percentage_is_one() throws IOException {
    Path book =
        book(
            "2024",
            (Filling)
                sheet -> {
                  rows("cultivar,rootstock,grafts,takes", "A,B,50,1").fill(sheet);
                  sheet.style(1, 3).format("0%").set();
                });
    assertThat(said(READER.read(List.of(book)), ProblemKind.PERCENT_FOR_COUNT)).hasSize(1);
    GraftRecords said =
        READER
            .withDictionary(
                SheetDictionary.parse("d", "{\"columns\": {\"takes\": {\"unit\": \"percent\"}}}"))
            .read(List.of(book));
    assertThat(said.takes()).isEqualTo(50);
  }

  // Text files

  @Test
  void a_quoted_field_that_ends_in_a_carriage_return_ends_there() throws IOException {
    GraftRecords records =
        read(
            """
            cultivar,rootstock,grafts,takes,notes
            A,B,10,4,"abc\r"
            A,B,10,3,"x\r"
            A,B,10,2,"y"\r
            A,B,10,1,z
            """);
    assertThat(records.grafts()).isEqualTo(40);
    assertThat(records.takes()).isEqualTo(10);
  }

  @Test
  void quoted_headings_are_read() throws IOException {
    assertThat(
            read("""
            "cultivar","rootstock","note, mine","outcome"
            "A","B","x","taken"
            """)
                .takes())
        .isEqualTo(1);
    assertThat(
            read("""
            "note; mine";"cultivar";"rootstock";"outcome"
            "x";"A";"B";"taken"
            """)
                .takes())
        .isEqualTo(1);
  }

  @Test
  void a_nul_byte_is_found_wherever_it_stands() {
    String text = "cultivar,rootstock,outcome\n" + "A,B,taken\n".repeat(1000) + "A,B\u0000,taken\n";
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("sheet.csv line 1002: found \"a NUL byte, which no text has\"");
  }

  @Test
  void rows_set_aside_with_nothing_under_a_needed_heading_are_read_again() throws IOException {
    GraftRecords records = read("cultivar,Rootstock,grafts,takes\nA,,10,4\nA,,10,3\n");
    Path again =
        Files.writeString(
            folder.resolve("again.csv"), records.setAside().csv(), StandardCharsets.UTF_8);
    assertThat(READER.read(List.of(again)).setAside().size()).isEqualTo(2);
    Files.writeString(again, records.setAside().csv().replace("A,,", "A,B,"));
    assertThat(READER.read(List.of(again)).takes()).isEqualTo(7);
  }

  @Test
  void a_first_heading_that_needs_quotation_marks_is_read_again() throws IOException {
    GraftRecords records = read("\"which, where\",cultivar,rootstock,grafts,takes\nx,A,B,10,14\n");
    Path again = Files.writeString(folder.resolve("again.csv"), records.setAside().csv());
    assertThat(READER.read(List.of(again)).setAside().rows().get(0).fields())
        .containsExactly("x", "A", "B", "10", "14");
  }

  @Test
  void percentages_without_a_column_of_grafts_say_what_is_missing() throws IOException {
    String sheet = "cultivar,rootstock,takes\nOrrin,Pellin,85\nOrrin,Halden,100\n";
    String percent = "\"columns\": {\"takes\": {\"unit\": \"percent\"}}";
    assertThat(said(read(sheet, "{" + percent + "}"), ProblemKind.PERCENT_FOR_COUNT))
        .hasSize(2)
        .allMatch(
            sentence ->
                sentence.contains(
                    "expected how many grafts it is out of: this sheet has no column of grafts;"));
    GraftRecords single = read(sheet, "{\"constants\": {\"grafts\": \"1\"}, " + percent + "}");
    assertThat(single.grafts()).isEqualTo(1);
    assertThat(said(single, ProblemKind.PERCENT_FOR_COUNT))
        .singleElement()
        .asString()
        .contains("a percentage that 1 graft can give");
    String batches = "cultivar,rootstock,grafts,takes\nOrrin,Pellin,,85\nOrrin,Halden,20,85\n";
    assertThat(said(read(batches, "{" + percent + "}"), ProblemKind.NEEDED_BLANK))
        .singleElement()
        .asString()
        .contains("column grafts", "how many grafts were made: other rows have more than one");
    String blank = "cultivar,rootstock,grafts,takes\nOrrin,Pellin,,85\nOrrin,Halden,1,100\n";
    assertThat(said(read(blank, "{" + percent + "}"), ProblemKind.PERCENT_FOR_COUNT))
        .singleElement()
        .asString()
        .contains("how many grafts it is out of: the number of grafts is blank; fill it in");
  }
}
