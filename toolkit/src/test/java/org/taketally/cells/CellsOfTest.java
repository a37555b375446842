package org.taketally.cells;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;

class CellsOfTest {

  private static final String SHEET =
      """
      record,cultivar,rootstock,method,graft_date,budwood_cut_date,grafts,takes,outcome
      1,Orrin,Halden seedling,saddle,2024-07-10,2024-07-08,,,taken
      2,Orrin,Halden seedling,cleft,2024-07-10,2024-07-08,12,9,
      3,Orrin,Halden seedling,saddle,2024-07-10,2024-07-08,,,failed
      4,Bexley,Tarn clonal,,2024-07-10,,,,unassessed
      5,Bexley,Tarn clonal,,2024-07-10,,,,taken
      """;

  @TempDir Path folder;

  private GraftRecords records() throws IOException {
    return RecordsReader.defaults()
        .read(List.of(Files.writeString(folder.resolve("a.csv"), SHEET)));
  }

  @Test
  void merges_equal_patterns_and_leaves_out_what_was_not_assessed() throws IOException {
    Cells cells =
        CellsOf.records(
            records(), List.of("cultivar", "method", "storage_days", "pairing", "season"));

    assertThat(cells.grafts()).containsExactly(2, 12, 1);
    assertThat(cells.takes()).containsExactly(1, 9, 1);
    assertThat(cells.factor("cultivar").levels()).containsExactly("Bexley", "Orrin");
    assertThat(cells.factor("cultivar").codes()).containsExactly(1, 1, 0);
    // cleft comes first in RecordColumn.METHOD
    assertThat(cells.factor("method").levels()).containsExactly("cleft", "saddle");
    assertThat(cells.factor("method").codes()).containsExactly(1, 0, Factor.MISSING);
    assertThat(cells.factor("pairing").levels())
        .containsExactly("Bexley × Tarn clonal", "Orrin × Halden seedling");
    assertThat(cells.factor("season").levels()).containsExactly("2024");
    assertThat(cells.measure("storage_days").values()).containsExactly(2, 2, Double.NaN);
    // 12 choose 9 = 220
    assertThat(cells.logCoefficients()).isCloseTo(Math.log(220), within(1e-13));
  }

  /** Rows 2 and 6 hold several grafts; the stream counts like the frame. */
  @Test
  void keeps_rows_of_several_grafts_apart_when_asked() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("rows.csv"), SHEET + "6,Orrin,Halden seedling,cleft,,,12,4,\n");
    List<String> columns = List.of("cultivar", Cells.BATCH_ROW);
    Cells cells = CellsOf.records(RecordsReader.defaults().read(List.of(file)), columns);
    assertThat(cells.grafts()).containsExactly(2, 12, 1, 12);
    assertThat(cells.factor(Cells.BATCH_ROW).levels()).containsExactly("row 2", "row 6");
    assertThat(cells.factor(Cells.BATCH_ROW).codes())
        .containsExactly(Factor.MISSING, 0, Factor.MISSING, 1);
    Cells counted = CellsOf.files(RecordsReader.defaults(), List.of(file), columns).cells();
    assertThat(counted.factor(Cells.BATCH_ROW)).isEqualTo(cells.factor(Cells.BATCH_ROW));
    assertThat(counted.grafts()).isEqualTo(cells.grafts());
  }

  @Test
  void numbers_that_name_groups_are_levels_in_their_order() {
    Factor beds = Factor.of(new Measure("bed", new double[] {10, 2, Double.NaN, 2.5, 10}));
    assertThat(beds.levels()).containsExactly("2", "2.5", "10");
    assertThat(beds.codes()).containsExactly(2, 0, Factor.MISSING, 1, 2);
  }

  @Test
  void leaves_a_column_out() throws IOException {
    Cells cells = CellsOf.records(records(), List.of("cultivar", "pairing", "storage_days"));
    assertThat(cells.without("pairing").factors())
        .extracting(Factor::name)
        .containsExactly("cultivar");
    assertThat(cells.without("storage_days").measures()).isEmpty();
    assertThat(cells.without("pairing").graftsTotal()).isEqualTo(cells.graftsTotal());
    assertThatThrownBy(() -> cells.without("moon"))
        .hasMessage(
            "no column of numbers \"moon\" in these cells; there are [storage_days]. Cells hold"
                + " only the columns they were counted by: CellsOf.records(records, ...) with one"
                + " more");
  }

  @Test
  void picks_the_cells_of_one_level() throws IOException {
    Cells cells = CellsOf.records(records(), List.of("cultivar", "method"));
    Cells orrin = cells.where("cultivar", "Orrin");
    assertThat(orrin.grafts()).containsExactly(2, 12);
    assertThat(orrin.factor("method").codes()).containsExactly(1, 0);
    assertThatThrownBy(() -> cells.where("cultivar", "Orin"))
        .hasMessage("no cultivar \"Orin\" in these records; there are: Bexley, Orrin");
  }

  @Test
  void names_the_columns_there_are() throws IOException {
    GraftRecords records = records();
    assertThatThrownBy(() -> CellsOf.records(records, List.of("cultivr")))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("no column \"cultivr\" in these records; there are [record, ");
  }

  @Test
  void orders_levels_naturally() {
    assertThat(LevelOrder.natural("row-2", "row-10")).isNegative();
    assertThat(LevelOrder.natural("Orrin", "bexley")).isPositive();
    assertThat(LevelOrder.natural("a", "a1")).isNegative();
    assertThat(LevelOrder.natural("a1b", "a1")).isPositive();
    assertThat(LevelOrder.natural("x", "x")).isZero();
    assertThat(LevelOrder.natural("A", "a")).isNotZero();
  }
}
