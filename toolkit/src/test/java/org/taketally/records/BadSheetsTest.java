package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
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
        RecordsReader.withDefaults()
            .crop(CropProfiles.named("avocado"))
            .today(LocalDate.of(2025, 1, 15))
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
