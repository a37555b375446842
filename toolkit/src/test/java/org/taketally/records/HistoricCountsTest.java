package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.taketally.records.dictionary.SheetDictionary;

/** The published counts are read as they were printed, by the dictionary beside them. */
class HistoricCountsTest {

  private static final Path COUNTS =
      Path.of(System.getProperty("taketally.root"), "datasets", "historic-counts");
  private static final Pattern OUT_OF = Pattern.compile(".*?(\\d+) of (\\d+).*");

  /** Totals as printed; of allanblackia-2011 and walnut-1923 worked out from printed shares. */
  @ParameterizedTest
  @CsvSource({
    "hickory-1923, graft_hickory_bixby_1923, 272, 140",
    "hickory-1924, graft_hickory_bixby_1924, 219, 83",
    "hickory-a-year-later, graft_hickory_persistence_1923_1924, 140, 116",
    "walnut-1923, graft_walnut_bixby_1923, 343, 142",
    "allanblackia-2011, graft_allanblackia_asaah_2011, 190, 121",
  })
  void reads_what_was_printed(String name, String check, long grafts, long takes) {
    Path folder = COUNTS.resolve(name);
    GraftRecords records =
        RecordsReader.defaults()
            .withDictionary(SheetDictionary.load(folder.resolve("dictionary.json")))
            .read(folder.resolve("grafts.csv"));
    assertThat(records.grafts()).isEqualTo(grafts);
    assertThat(records.takes()).isEqualTo(takes);
    assertThat(records.setAside().size()).isZero();
    assertThat(folder.resolve("grafts.csv"))
        .hasSameBinaryContentAs(Path.of("src/test/resources/checks", check + ".csv"));
  }

  @ParameterizedTest
  @CsvSource({"hickory-1923", "hickory-1924", "walnut-1923"})
  void says_of_each_misprint_what_follows_from_the_counts(String name) throws IOException {
    Path file = COUNTS.resolve(name).resolve("misprints.csv");
    assertThat(Files.size(file)).isPositive();
    try (CsvReader<NamedCsvRecord> rows =
        CsvReader.builder().ofNamedCsvRecord(file, StandardCharsets.UTF_8)) {
      for (NamedCsvRecord row : rows) {
        Matcher counts = OUT_OF.matcher(row.getField("place") + " " + row.getField("from_counts"));
        assertThat(counts.matches()).as(row.toString()).isTrue();
        double share =
            100.0 * Integer.parseInt(counts.group(1)) / Integer.parseInt(counts.group(2));
        assertThat(row.getField("from_counts"))
            .contains(String.format(Locale.ROOT, "%.1f %%", share));
        assertThat(row.getField("printed")).doesNotContain(row.getField("from_counts"));
      }
    }
  }
}
