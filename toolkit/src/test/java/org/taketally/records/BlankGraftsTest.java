package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whether a row without its grafts is kept doesn't hang on how many of them took. */
class BlankGraftsTest {

  private static final String HEADER = "cultivar,rootstock,grafts,takes\n";

  @TempDir Path folder;

  private GraftRecords read(String name, String text) throws IOException {
    return RecordsReader.defaults().read(List.of(Files.writeString(folder.resolve(name), text)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "1", "2", "9", ""})
  void beside_batches_a_blank_is_set_aside_whatever_took(String takes) throws IOException {
    String blank = "Orrin,Pellin,," + takes + "\n";
    GraftRecords records = read("sheet.csv", HEADER + blank + "Orrin,Pellin,12,9\n");
    assertThat(records.grafts()).isEqualTo(12);
    assertThat(records.problems().get(0).sentence())
        .endsWith(
            "sheet.csv line 2, column grafts: found \"\", expected how many grafts were made: other"
                + " rows have more than one (\"12\" on line 3); fill it in; write 1 for a single"
                + " graft");
  }

  /** Read again alone, nothing shows that its sheet held batches. */
  @Test
  void set_aside_and_not_repaired_it_is_set_aside_again() throws IOException {
    GraftRecords records =
        read("sheet.csv", HEADER + "Orrin,Pellin,,0\nOrrin,Pellin,,1\nOrrin,Pellin,12,9\n");
    String aside = records.setAside().csv();
    assertThat(read("set-aside.csv", aside).provenance().rowsKept()).isZero();
    GraftRecords repaired =
        read("repaired.csv", aside.replace("Pellin,,0", "Pellin,1,0").replace(",,1", ",14,1"));
    assertThat(repaired.grafts()).isEqualTo(15);
  }

  @Test
  void where_no_row_is_a_batch_a_blank_is_one_graft() throws IOException {
    assertThat(read("a.csv", HEADER + "Orrin,Pellin,,1\nOrrin,Pellin,,0\n").grafts()).isEqualTo(2);
    assertThat(read("b.csv", HEADER + "Orrin,Pellin,1,1\nOrrin,Pellin,,0\n").grafts()).isEqualTo(2);
  }

  /** However late the row that settles it. */
  @Test
  void a_batch_far_down_the_sheet_settles_blanks_above_it() throws IOException {
    GraftRecords records =
        read("late.csv", HEADER + "Orrin,Pellin,,1\n".repeat(20_001) + "Orrin,Pellin,12,9\n");
    assertThat(records.grafts()).isEqualTo(12);
    assertThat(records.provenance().rowsSetAside()).isEqualTo(20_001);
  }

  @Test
  void a_share_far_down_the_sheet_puts_a_1_above_it_in_doubt() throws IOException {
    GraftRecords records =
        read(
            "late.csv",
            HEADER
                + "Orrin,Pellin,10,1\n"
                + "Orrin,Pellin,10,3\n".repeat(20_000)
                + "Orrin,Pellin,10,0.9\n");
    assertThat(records.problems().get(0).sentence())
        .endsWith(
            "late.csv line 2, column takes: found \"1\", expected a count that reads one way only;"
                + " this could be 1 of 10 or all 10, because \"0.9\" on line 20003 is a share;"
                + " write the count, or say \"unit\": \"share\" for this column in the dictionary");
  }
}
