package org.taketally.cells;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;

/** Rows of a frame and rows passing by make the same cells, whatever a column holds. */
class FrameAndStreamTest {

  private static final String SHEET =
      """
      record,cultivar,rootstock,method,graft_date,budwood_cut_date,storage_temp_c,grafts,takes,outcome,fridge,bed,remark
      1,Orrin,Halden seedling,saddle,2024-07-12,2024-07-08,4,,,unassessed,20,b2,late
      2,Orrin,Halden seedling,cleft,2024-07-12,2024-07-08,4.0,12,9,,20.0,b10,
      3,Velmar,Halden seedling,saddle,2024-07-10,2024-07-08,,,,failed,5,b10,late
      4,Bexley,Tarn clonal,,2024-07-10,,,,,unassessed,-0,b1,
      5,Bexley,Tarn clonal,,2024-07-09,,0,,,taken,0,b1,wet
      6,Velmar,Tarn clonal,whip-and-tongue,,,3.5,30,11,,3,,wet
      7,Orrin,Halden seedling,cleft,2024-07-12,2024-07-08,4,6,2,,20,b10,
      """;

  @TempDir private Path folder;

  @Test
  void make_the_same_cells() throws IOException {
    Path sheet = Files.writeString(folder.resolve("sheet.csv"), SHEET);
    GraftRecords records = RecordsReader.defaults().read(List.of(sheet));
    List<String> all = new ArrayList<>(records.frame().columnNames());
    all.add(Cells.BATCH_ROW);
    Stream<List<String>> each = all.stream().map(List::of);
    for (List<String> columns : Stream.concat(each, Stream.of(List.copyOf(all))).toList()) {
      Cells counted = CellsOf.files(RecordsReader.defaults(), List.of(sheet), columns).cells();
      assertThat(told(counted))
          .as("%s", columns)
          .isEqualTo(told(CellsOf.records(records, columns)));
    }
  }

  /** 20 and 20.0 of a column not ours are one number, and so one cell. */
  @Test
  void know_numbers_written_in_two_ways() throws IOException {
    Path sheet = Files.writeString(folder.resolve("sheet.csv"), SHEET);
    List<String> columns = List.of("fridge");
    Cells cells = CellsOf.files(RecordsReader.defaults(), List.of(sheet), columns).cells();
    assertThat(cells.measure("fridge").values()).containsExactly(20, 5, 0, 3);
    assertThat(cells.grafts()).containsExactly(18, 1, 1, 30);
    assertThat(cells.takes()).containsExactly(11, 0, 1, 11);
  }

  private static List<Object> told(Cells cells) {
    List<Object> told = new ArrayList<>(cells.factors());
    told.addAll(cells.measures());
    told.add(IntStream.of(cells.grafts()).boxed().toList());
    told.add(IntStream.of(cells.takes()).boxed().toList());
    told.add(cells.logCoefficients());
    for (Factor factor : cells.factors()) {
      factor.levels().forEach(level -> told.add(cells.unassessed(factor.name(), level)));
    }
    return told;
  }
}
