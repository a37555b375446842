package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.taketally.records.checks.ColumnCount;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.rows.RowVisitor;
import org.taketally.terms.Problem;

/**
 * One bad sheet per failure, in {@code records/bad}: beside each stands, word for word, what must
 * be said of it and how many rows are kept. All sheets are read on 2025-01-15 with the avocado
 * profile and no dictionary.
 */
class BadSheetsTest {

  private static final Path FOLDER =
      Path.of(System.getProperty("taketally.root"), "toolkit/src/test/resources/records/bad");

  static Stream<String> sheets() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(".csv"))
          .map(name -> name.substring(0, name.length() - 4))
          .sorted()
          .toList()
          .stream();
    }
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void says_what_is_wrong_where_and_what_to_do(String name) throws IOException {
    Path expected = FOLDER.resolve(name + ".txt");
    GraftRecords records =
        RecordsReader.defaults()
            .withCrop(CropProfiles.named("avocado"))
            .withToday(LocalDate.of(2025, 1, 15))
            .read(List.of(FOLDER.resolve(name + ".csv")));
    String said = said(records);
    if ("write".equals(System.getProperty("golden"))) {
      Files.writeString(expected, said);
    }
    assertThat(said).isEqualTo(Files.readString(expected));
    assertThat(records.provenance().rowsKept() + records.setAside().size())
        .isEqualTo(records.provenance().rowsRead());
    assertThat(records.frame().rowCount()).isEqualTo((int) records.provenance().rowsKept());
  }

  /** {@code check} looks through the rows without holding them, and must see the same. */
  @ParameterizedTest
  @MethodSource("everything")
  void looking_through_finds_what_reading_finds(List<Path> sheets, @TempDir Path folder) {
    Path dictionary = sheets.get(0).resolveSibling("dictionary.json");
    RecordsReader reader =
        RecordsReader.defaults()
            .withCrop(CropProfiles.named("avocado"))
            .withToday(LocalDate.of(2025, 1, 15));
    reader =
        Files.exists(dictionary) ? reader.withDictionary(SheetDictionary.load(dictionary)) : reader;
    GraftRecords held = reader.read(sheets);
    Path aside = folder.resolve("aside.csv");
    RecordsCheck seen = reader.scan(sheets, List.of(), RowVisitor.NONE, aside);
    assertThat(seen.problems()).isEqualTo(held.problems());
    assertThat(seen.summary().text()).isEqualTo(held.summary().text());
    assertThat(seen.provenance()).isEqualTo(held.provenance());
    assertThat(List.of(seen.grafts(), seen.takes()))
        .isEqualTo(List.of(held.grafts(), held.takes()));
    assertThat(recorded(seen)).isEqualTo(recorded(held.check()));
    assertThat(seen.seasons()).isEqualTo(held.check().seasons());
    assertThat(seen.sites()).isEqualTo(held.check().sites());
    assertThat(aside).content().isEqualTo(held.setAside().csv());
  }

  /** Columns of the sheet; pairings and days are put together only for those who ask. */
  private static List<ColumnCount> recorded(RecordsCheck check) {
    return check.columns().stream()
        .filter(column -> RecordColumn.named(column.name()).isPresent())
        .toList();
  }

  /** Each bad sheet, and the sheets of each data set together. */
  static Stream<List<Path>> everything() throws IOException {
    Path datasets = Path.of(System.getProperty("taketally.root"), "datasets");
    try (Stream<Path> files = Files.walk(datasets)) {
      Map<Path, List<Path>> folders =
          files
              .filter(file -> file.getFileName().toString().matches("(grafts|sheet).*\\.csv"))
              .sorted()
              .collect(Collectors.groupingBy(Path::getParent, TreeMap::new, Collectors.toList()));
      return Stream.concat(
          sheets().map(name -> List.of(FOLDER.resolve(name + ".csv"))), folders.values().stream());
    }
  }

  private static String said(GraftRecords records) {
    String problems =
        records.problems().stream().map(BadSheetsTest::line).collect(Collectors.joining());
    return problems.replace(FOLDER + "/", "")
        + "%d read, %d kept, %d grafts, %d takes%n"
            .formatted(
                records.provenance().rowsRead(),
                records.provenance().rowsKept(),
                records.grafts(),
                records.takes())
            .replace(System.lineSeparator(), "\n");
  }

  private static String line(Problem problem) {
    return problem.severity().name().toLowerCase(Locale.ROOT) + " " + problem.sentence() + "\n";
  }
}
