package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.cells.CellsOf;
import org.taketally.records.checks.ColumnCount;
import org.taketally.records.checks.LevelCount;
import org.taketally.records.problems.ProblemKind;
import org.taketally.records.problems.RecordsUnreadable;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/** The ways into records without options, and from records to fewer or joined ones. */
class RecordsDoorTest {

  private static final Path DATASETS =
      Path.of(System.getProperty("taketally.root"), "datasets/halden-bay-avocado");

  @TempDir Path folder;

  private Path sheet(String name, String rows) throws IOException {
    return Files.writeString(
        folder.resolve(name), "cultivar,rootstock,grafter,season,grafts,takes\n" + rows);
  }

  private GraftRecords three() throws IOException {
    return GraftRecords.read(
        sheet("a.csv", "A,B,Jo,2024,10,4\nA,C,Ann,2024,8,8\nA,C,,2025,5,\nA,B,Jo,2025,5,\n"));
  }

  @Test
  void files_and_folders_are_read_without_options() throws IOException {
    sheet("a.csv", "A,B,Jo,2024,10,4\n");
    sheet("b.csv", "A,B,Jo,2025,20,9\n");
    Files.writeString(folder.resolve("notes.csv"), "what,when\nx,y\n");
    GraftRecords records = GraftRecords.read(folder);
    assertThat(records.grafts()).isEqualTo(30);
    assertThat(records.summary().count(ProblemKind.SHEET_LEFT_OUT)).isEqualTo(1);
    assertThat(GraftRecords.read(folder.resolve("a.csv"), folder.resolve("b.csv")).takes())
        .isEqualTo(13);
    assertThatThrownBy(() -> GraftRecords.read(folder.resolve("notes.csv")))
        .isInstanceOf(RecordsUnreadable.class);
    assertThatThrownBy(() -> GraftRecords.read()).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void rows_are_kept_by_level_or_condition_and_counted_anew() throws IOException {
    GraftRecords all = three();
    GraftRecords one = all.where("season", "2024");
    assertThat(one.grafts()).isEqualTo(18);
    assertThat(one.takes()).isEqualTo(12);
    assertThat(one.provenance().rowsKept()).isEqualTo(2);
    assertThat(one.provenance().sources()).last().isEqualTo("only rows with season 2024");
    assertThat(one.check().seasons()).containsExactly(new LevelCount("2024", 2, 18, 12, 0));
    assertThat(one.check().columns())
        .filteredOn(column -> column.name().equals("grafter"))
        .extracting(ColumnCount::recorded, ColumnCount::levels)
        .containsExactly(org.assertj.core.api.Assertions.tuple(2L, 2));
    assertThat(all.where(t -> t.intColumn("grafts").isGreaterThan(8)).takes()).isEqualTo(4);
    assertThat(CellsOf.records(one, List.of("cultivar", "rootstock")).graftsTotal()).isEqualTo(18);
    assertThat(all.grafts()).isEqualTo(18);
    assertThat(all.where("season", "2025").check().seasons())
        .containsExactly(new LevelCount("2025", 2, 0, 0, 10));
  }

  @Test
  void a_level_is_left_out_and_rows_without_one_stay() throws IOException {
    GraftRecords records = three().without("grafter", "Jo");
    assertThat(records.frame().rowCount()).isEqualTo(2);
    assertThat(records.takes()).isEqualTo(8);
  }

  @Test
  void a_column_or_level_that_is_not_there_is_named_with_the_nearest() throws IOException {
    GraftRecords records = three();
    assertThatThrownBy(() -> records.without("graftr", "Jo"))
        .hasMessage("no column \"graftr\" in these records; did you mean \"grafter\"?");
    assertThatThrownBy(() -> records.where("grafter", "Anne"))
        .hasMessage("no grafter \"Anne\" in these records; did you mean \"Ann\"?");
    assertThatThrownBy(() -> records.where("grafter"))
        .hasMessage("name at least one level of grafter");
  }

  @Test
  void a_frame_read_anew_is_the_same_frame() {
    GraftRecords records = GraftRecords.read(DATASETS.resolve("grafts-2022.csv"));
    GraftRecords again = GraftRecords.of(records.frame());
    SameTable.assertSame(again.frame(), records.frame());
    assertThat(again.takes()).isEqualTo(records.takes());
  }

  @Test
  void a_joined_table_is_checked_like_a_sheet() {
    Table table =
        Table.create("joined")
            .addColumns(
                StringColumn.create("cultivar", "A", "A", "B"),
                StringColumn.create("rootstock", "S", "T", "S"),
                StringColumn.create("lot", "1", "2", "1"),
                IntColumn.create("grafts", 10, 10, 10),
                IntColumn.create("takes", 4, 12, 7));
    GraftRecords records = GraftRecords.of(table);
    assertThat(records.grafts()).isEqualTo(20);
    assertThat(records.setAside().size()).isEqualTo(1);
    assertThat(records.problems().get(0).sentence()).contains("joined line 2, column takes");
    assertThat(records.frame().stringColumn("lot").asList()).containsExactly("1", "1");
    assertThatThrownBy(() -> GraftRecords.of(Table.create("t", StringColumn.create("x", "y"))))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("expected columns cultivar, rootstock, takes or outcome");
  }
}
