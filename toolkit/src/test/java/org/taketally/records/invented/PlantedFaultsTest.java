package org.taketally.records.invented;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.taketally.records.CropProfiles;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.invented.PlantedFaults.Fault;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;
import tech.tablesaw.api.ColumnType;
import tech.tablesaw.api.Row;
import tech.tablesaw.api.Table;

/** Reading the messy sheets names every fault put into them, no other, and loses nothing. */
class PlantedFaultsTest {

  private static final Path DATASETS = Path.of(System.getProperty("taketally.root"), "datasets");
  private static final Path MESSY_FOLDER = DATASETS.resolve(BundledDatasets.AVOCADO_MESSY);
  private static final RecordsReader READER =
      RecordsReader.defaults()
          .withCrop(CropProfiles.named("avocado"))
          .withToday(LocalDate.of(2026, 11, 25));
  private static final GraftRecords MESSY =
      READER
          .withDictionary(SheetDictionary.load(MESSY_FOLDER.resolve("dictionary.json")))
          .read(sheets(MESSY_FOLDER, "sheet-"));
  private static final GraftRecords CLEAN =
      READER.read(sheets(DATASETS.resolve(BundledDatasets.AVOCADO), "grafts-"));
  private static final List<Fault> FAULTS = PlantedFaults.bundled();

  private static List<Path> sheets(Path folder, String start) {
    List<Path> files = new ArrayList<>();
    for (int year = 2022; year <= 2025; year++) {
      files.add(folder.resolve(start + year + ".csv"));
    }
    return files;
  }

  @Test
  void every_fault_is_named_with_its_place_and_a_remedy() {
    for (Fault fault : FAULTS) {
      if (!fault.severity().isEmpty()) {
        List<Problem> there = problemsAt(fault.file(), fault.line());
        assertThat(there)
            .as("%s line %d: %s", fault.file(), fault.line(), fault.fault())
            .extracting(Problem::severity, Problem::column, Problem::found)
            .contains(tuple(severity(fault), fault.column(), fault.reported()));
        assertThat(there).allMatch(problem -> !problem.remedy().isBlank());
      }
    }
  }

  private static List<Problem> problemsAt(String file, int line) {
    return MESSY.problems().stream()
        .filter(problem -> problem.line() == line)
        .filter(problem -> Path.of(problem.file()).endsWith(file))
        .toList();
  }

  private static Severity severity(Fault fault) {
    return Severity.valueOf(fault.severity().toUpperCase(Locale.ROOT));
  }

  @Test
  void nothing_else_is_called_wrong_or_worth_a_look() {
    Set<String> planted = new HashSet<>();
    FAULTS.forEach(fault -> planted.add(fault.file() + " " + fault.line()));
    for (Problem problem : MESSY.problems()) {
      if (problem.severity() != Severity.NOTE) {
        assertThat(planted)
            .as(problem.sentence())
            .contains(Path.of(problem.file()).getFileName() + " " + problem.line());
      }
    }
  }

  @Test
  void the_clean_sheets_need_no_dictionary_and_have_nothing_to_look_at() {
    assertThat(CLEAN.problems()).allMatch(problem -> problem.severity() == Severity.NOTE);
    assertThat(CLEAN.provenance().rowsSetAside()).isZero();
  }

  @Test
  void no_row_is_lost_and_rows_with_errors_are_set_aside() {
    Set<String> wrong = new HashSet<>();
    FAULTS.stream()
        .filter(fault -> fault.severity().equals("error"))
        .forEach(fault -> wrong.add(fault.file() + " " + fault.line()));
    long totals = 1;
    assertThat(MESSY.provenance().rowsRead()).isEqualTo(CLEAN.provenance().rowsRead() + totals);
    assertThat(MESSY.provenance().rowsSetAside()).isEqualTo(wrong.size());
    assertThat(MESSY.frame().rowCount()).isEqualTo((int) MESSY.provenance().rowsKept());
  }

  /** Every row without a planted fault comes back as it is in the clean sheets. */
  @Test
  void other_rows_mean_what_the_clean_sheets_say() {
    Set<String> touched = touchedRecords();
    Map<String, Row> clean = new HashMap<>();
    CLEAN
        .frame()
        .forEach(row -> clean.put(row.getString("record"), CLEAN.frame().row(row.getRowNumber())));
    int compared = 0;
    for (Row row : MESSY.frame()) {
      if (!touched.contains(row.getString("record"))) {
        assertSame(row, clean.get(row.getString("record")));
        compared++;
      }
    }
    assertThat(compared).isGreaterThan(2950);
  }

  /** Records are numbered by line in each clean sheet. */
  private static Set<String> touchedRecords() {
    Set<String> records = new HashSet<>();
    for (Fault fault : FAULTS) {
      String year = fault.file().substring("sheet-20".length(), "sheet-20".length() + 2);
      records.add("A%s-%04d".formatted(year, fault.line() - 1));
    }
    return records;
  }

  private static void assertSame(Row messy, Row clean) {
    Table frame = CLEAN.frame();
    for (String column : frame.columnNames()) {
      String where = messy.getString("record") + " " + column;
      Object expected = clean.getObject(column);
      Object found = messy.getObject(column);
      if (expected != null && frame.column(column).type().equals(ColumnType.DOUBLE)) {
        // Diameters went through inches with three decimals: half of 0.001 inch is 0.0127 mm; the
        // mismatch is a difference of two of them.
        assertThat((Double) found).as(where).isCloseTo((Double) expected, within(0.026));
      } else {
        assertThat(found).as(where).isEqualTo(expected);
      }
    }
  }
}
