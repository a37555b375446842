package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.problems.RecordsUnreadable;

/** Sheets of people who never wrote down what they grafted on. */
class NoRootstockColumnTest {

  @TempDir private Path folder;

  private Path sheet(String text) throws IOException {
    return Files.writeString(folder.resolve("grafts.csv"), text);
  }

  private List<String> rootstocks(GraftRecords records) {
    return records.frame().stringColumn("rootstock").asList();
  }

  @Test
  void without_a_word_the_way_out_is_named() throws IOException {
    Path sheet = sheet("cultivar,outcome\nOrrin,taken\nPell,failed\n");

    assertThatThrownBy(() -> RecordsReader.defaults().read(List.of(sheet)))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("--rootstock unknown");
  }

  @Test
  void all_grafts_stand_on_what_is_said() throws IOException {
    Path sheet = sheet("cultivar,outcome\nOrrin,taken\nPell,failed\n");

    GraftRecords records = RecordsReader.defaults().withRootstock("unknown").read(List.of(sheet));

    assertThat(rootstocks(records)).containsExactly("unknown", "unknown");
    assertThat(records.setAside().size()).isZero();
  }

  @Test
  void a_column_in_the_sheet_is_never_overruled_unseen() throws IOException {
    Path sheet = sheet("cultivar,rootstock,outcome\nOrrin,Ostrey,taken\nPell,Marl,failed\n");

    assertThatThrownBy(() -> RecordsReader.defaults().withRootstock("unknown").read(List.of(sheet)))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("rootstock");
  }
}
