package org.taketally.cells;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.RecordsReader;

/** Grafts without a result are in no cell, but not forgotten. */
class UnassessedGraftsTest {

  private static final List<String> COLUMNS = List.of("cultivar", "rootstock");

  @TempDir private Path folder;

  @Test
  void are_counted_by_level_from_a_frame_and_from_a_stream() throws IOException {
    Path sheet =
        Files.writeString(
            folder.resolve("sheet.csv"),
            """
            cultivar,rootstock,grafts,takes,outcome
            Orrin,Pellin,5,3,
            Orrin,Ostrey,4,2,
            Orrin,Ostrey,3,,unassessed
            Velmar,Pellin,1,,unassessed
            """);
    RecordsReader reader = RecordsReader.defaults();
    for (Cells cells :
        List.of(
            CellsOf.records(reader.read(List.of(sheet)), COLUMNS),
            CellsOf.files(reader, List.of(sheet), COLUMNS).cells())) {
      assertThat(cells.graftsTotal()).isEqualTo(9);
      assertThat(cells.unassessed("rootstock", "Ostrey")).isEqualTo(3);
      assertThat(cells.unassessed("rootstock", "Pellin")).isEqualTo(1);
      assertThat(cells.unassessed("cultivar", "Orrin")).isEqualTo(3);
      assertThat(cells.where("rootstock", "Ostrey").unassessed("rootstock", "Ostrey")).isEqualTo(3);
      assertThat(cells.without("cultivar").unassessed("rootstock", "Ostrey")).isEqualTo(3);
    }
  }
}
