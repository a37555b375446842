package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.function.Consumer;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** Workbooks (.xlsx) give the records their CSV gives, whatever type their cells have. */
class WorkbookTest {

  private static final Path AVOCADO =
      Path.of(System.getProperty("taketally.root"), "datasets/halden-bay-avocado/grafts-2022.csv");
  private static final RecordsReader READER =
      RecordsReader.defaults()
          .withCrop(CropProfiles.named("avocado"))
          .withToday(LocalDate.of(2026, 11, 25));

  @TempDir Path folder;

  private interface Filling {
    void fill(Workbook book) throws IOException;
  }

  private Path book(String name, Filling filling) throws IOException {
    Path file = folder.resolve(name);
    try (OutputStream out = Files.newOutputStream(file);
        Workbook book = new Workbook(out, "Taketally test", "1.0")) {
      filling.fill(book);
    }
    return file;
  }

  /** A sheet of headings and one row whose further cells the test fills. */
  private Path small(Consumer<Worksheet> row) throws IOException {
    return book(
        "small.xlsx",
        book -> {
          Worksheet sheet = book.newWorksheet("Grafts");
          String[] headings = {"cultivar", "rootstock", "graft_date", "storage_temp_c", "outcome"};
          for (int c = 0; c < headings.length; c++) {
            sheet.value(0, c, headings[c]);
          }
          sheet.value(1, 0, "Orrin");
          sheet.value(1, 1, "Halden seedling");
          sheet.value(1, 4, "taken");
          row.accept(sheet);
        });
  }

  private static Problem only(GraftRecords records, Severity severity) {
    List<Problem> problems =
        records.problems().stream().filter(p -> p.severity() == severity).toList();
    assertThat(problems).hasSize(1);
    return problems.get(0);
  }

  /** A whole season with numbers as numbers and days as days, as spreadsheets keep them. */
  @Test
  void a_season_reads_as_from_csv() throws IOException {
    Path file = book("season.xlsx", book -> typed(book.newWorksheet("2022"), lines(AVOCADO)));
    GraftRecords fromBook = READER.read(List.of(file));
    GraftRecords fromCsv = READER.read(List.of(AVOCADO));
    SameTable.assertSame(fromBook.frame(), fromCsv.frame());
    assertThat(fromBook.grafts()).isEqualTo(fromCsv.grafts()).isGreaterThan(500);
    assertThat(fromBook.takes()).isEqualTo(fromCsv.takes());
    assertThat(fromBook.setAside().size()).isZero();
  }

  private static List<String[]> lines(Path csv) throws IOException {
    return Files.readAllLines(csv).stream().map(line -> line.split(",", -1)).toList();
  }

  private static void typed(Worksheet sheet, List<String[]> lines) {
    for (int r = 0; r < lines.size(); r++) {
      String[] fields = lines.get(r);
      for (int c = 0; c < fields.length; c++) {
        String field = fields[c];
        boolean name = lines.get(0)[c].matches("record|season");
        if (field.matches("\\d{4}-\\d\\d-\\d\\d")) {
          sheet.value(r, c, LocalDate.parse(field));
          sheet.style(r, c).format("dd/mm/yyyy").set();
        } else if (field.matches("-?\\d+(\\.\\d+)?") && !name) {
          sheet.value(r, c, new java.math.BigDecimal(field));
        } else if (!field.isEmpty()) {
          sheet.value(r, c, field);
        }
      }
    }
  }

  /** Whatever way round the sheet shows a day, the cell holds it without doubt. */
  @Test
  void a_day_kept_as_a_day_reads_one_way_only() throws IOException {
    GraftRecords records =
        READER.read(
            List.of(
                small(
                    sheet -> {
                      sheet.value(1, 2, LocalDateTime.of(2025, 3, 4, 0, 0));
                      sheet.style(1, 2).format("mm/dd/yy").set();
                    })));
    assertThat(records.frame().dateColumn("graft_date").get(0)).isEqualTo(LocalDate.of(2025, 3, 4));
  }

  @Test
  void a_day_typed_as_text_that_reads_two_ways_is_not_read() throws IOException {
    Path file = small(sheet -> sheet.value(1, 2, "04/03/2025"));
    GraftRecords records = READER.read(List.of(file));
    assertThat(records.frame().dateColumn("graft_date").isMissing(0)).isTrue();
    Problem problem = only(records, Severity.CHECK);
    assertThat(problem.line()).isEqualTo(2);
    assertThat(problem.sentence())
        .contains("this could be 4 March 2025 (dd/MM/yyyy) or 3 April 2025 (MM/dd/yyyy)");
  }

  /** A number cell has no decimal sign to doubt; the same typed as text has. */
  @Test
  void a_number_cell_is_exact_and_a_text_cell_is_not() throws IOException {
    GraftRecords exact = READER.read(List.of(small(sheet -> sheet.value(1, 3, 6.125))));
    assertThat(exact.frame().doubleColumn("storage_temp_c").get(0)).isEqualTo(6.125);
    GraftRecords text = READER.read(List.of(small(sheet -> sheet.value(1, 3, "6,125"))));
    assertThat(only(text, Severity.CHECK).sentence()).contains("6125", "6.125");
  }

  @Test
  void all_sheets_or_the_one_the_dictionary_names() throws IOException {
    Path file =
        book(
            "two.xlsx",
            book -> {
              typed(
                  book.newWorksheet("Old"),
                  rows("cultivar,rootstock,outcome", "Orrin,Linnock,failed"));
              typed(
                  book.newWorksheet("New"),
                  rows("cultivar,rootstock,outcome", "Orrin,Linnock,taken", "Orrin,Linnock,taken"));
            });
    assertThat(READER.read(List.of(file)).grafts()).isEqualTo(3);
    assertThat(READER.withDictionary(naming("Old")).read(List.of(file)).takes()).isZero();
    assertThat(READER.withDictionary(naming("New")).read(List.of(file)).takes()).isEqualTo(2);
    assertThatThrownBy(() -> READER.withDictionary(naming("2024")).read(List.of(file)))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessage(
            file
                + ": found \"no sheet \"2024\"\", expected a CSV or XLSX file;"
                + " choose one of [Old, New]");
  }

  private static List<String[]> rows(String... lines) {
    return java.util.Arrays.stream(lines).map(line -> line.split(",")).toList();
  }

  private SheetDictionary naming(String sheet) throws IOException {
    return SheetDictionary.load(
        Files.writeString(
            folder.resolve("dictionary.json"), "{ \"sheet\": \"%s\" }".formatted(sheet)));
  }

  /** Rows left blank, or only coloured, are no rows, and lines keep the sheet's own numbers. */
  @Test
  void blank_rows_are_passed_over_and_lines_keep_their_numbers() throws IOException {
    Path file =
        small(
            sheet -> {
              sheet.style(2, 0).fillColor("FFFF00").set();
              sheet.value(4, 0, "Orrin");
              sheet.value(4, 1, "Linnock");
              sheet.value(4, 4, "perhaps");
            });
    GraftRecords records = READER.read(List.of(file));
    assertThat(records.provenance().rowsRead()).isEqualTo(2);
    assertThat(only(records, Severity.ERROR).line()).isEqualTo(5);
  }

  @Test
  void a_broken_workbook_and_an_empty_sheet_are_refused() throws IOException {
    Path broken =
        Files.write(
            folder.resolve("broken.xlsx"), "PK\3\4 nothing more".getBytes(StandardCharsets.UTF_8));
    assertThatThrownBy(() -> READER.read(List.of(broken)))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("a workbook that can't be opened")
        .hasMessageEndingWith("save it as .xlsx or \"CSV UTF-8\" again");
    Path empty = book("empty.xlsx", book -> book.newWorksheet("Grafts").value(0, 0, ""));
    assertThatThrownBy(() -> READER.read(List.of(empty)))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("found \"an empty sheet\"")
        .hasMessageEndingWith("name the sheet with the records: \"sheet\"");
  }
}
