package org.taketally.records.invented;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The files in the folder datasets are what the seed makes; {@code -Dgolden=write} rewrites. */
class InventedRecordsTest {

  private static final Path DATASETS = Path.of(System.getProperty("taketally.root"), "datasets");

  @Test
  void the_avocado_files_are_what_the_seed_makes() throws IOException {
    compare(BundledDatasets.AVOCADO, InventedRecords.avocado(InventedRecords.AVOCADO_SEED));
  }

  @Test
  void the_messy_avocado_files_are_made_from_the_clean_ones() throws IOException {
    compare(BundledDatasets.AVOCADO_MESSY, InventedRecords.avocadoMessy());
  }

  @Test
  void the_walnut_files_are_what_the_seed_makes() throws IOException {
    compare(BundledDatasets.WALNUT, InventedRecords.walnut(InventedRecords.WALNUT_SEED));
  }

  @Test
  void the_running_season_is_what_the_seed_makes() throws IOException {
    compare(BundledDatasets.RUNNING_SEASON, InventedRecords.runningSeason());
  }

  @Test
  void another_seed_makes_other_records_of_the_same_kind() {
    String one = InventedRecords.walnut(1).get("grafts-2025.csv");
    String two = InventedRecords.walnut(2).get("grafts-2025.csv");
    assertThat(two).isNotEqualTo(one);
    assertThat(two.lines().findFirst()).isEqualTo(one.lines().findFirst());
  }

  static void compare(String dataset, Map<String, String> files) throws IOException {
    assertThat(files).isNotEmpty();
    for (Map.Entry<String, String> file : files.entrySet()) {
      Path path = DATASETS.resolve(dataset).resolve(file.getKey());
      if ("write".equals(System.getProperty("golden"))) {
        Files.writeString(path, file.getValue(), StandardCharsets.UTF_8);
      }
      assertThat(Files.readString(path, StandardCharsets.UTF_8))
          .as(path.toString())
          .isEqualTo(file.getValue());
    }
  }
}
