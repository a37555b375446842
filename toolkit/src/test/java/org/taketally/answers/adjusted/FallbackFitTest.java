package org.taketally.answers.adjusted;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.cells.CellsOf;
import org.taketally.model.TakeModel;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.wording.ModelWords;

class FallbackFitTest {

  @TempDir private Path folder;

  /** One row of a slip, 4,500 fresh grafts for 45, leaves no room for a curve's knots elsewhere. */
  @Test
  void a_number_without_room_for_a_curve_is_a_straight_line() throws IOException {
    StringBuilder sheet = new StringBuilder("cultivar,rootstock,grafts,takes,storage_days\n");
    sheet.append("Orrin,Nerrin,4500,2700,0\n");
    for (int day = 0; day < 8; day++) {
      sheet.append("Orrin,Ostrey,10,%d,%d\n".formatted(7 - day / 2, day));
      sheet.append("Brell,Nerrin,10,%d,%d\n".formatted(6 - day / 2, day));
    }
    Path file = Files.writeString(folder.resolve("grafts.csv"), sheet);
    GraftRecords records = RecordsReader.defaults().withToday(LocalDate.of(2030, 1, 1)).read(file);
    TakeModel model = SuggestedModel.of(records).model();
    assertThat(model.curves()).containsKey("storage_days");
    FallbackFit fallback =
        FallbackFit.of(CellsOf.records(records, SuggestedModel.needed(model)), model);
    assertThat(fallback.fit().model().curves()).isEmpty();
    assertThat(fallback.fit().model().adjusted()).contains("storage_days");
    assertThat(fallback.changes())
        .extracting(ModelWords::of)
        .last()
        .asString()
        .startsWith("Storage_days has too few different values for a curve")
        .endsWith("Here it is a straight line instead.");
  }
}
