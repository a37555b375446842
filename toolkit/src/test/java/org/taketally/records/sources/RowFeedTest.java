package org.taketally.records.sources;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.problems.RecordsUnreadable;

/** Rows read on a thread of their own come as they would without one: all, once, in order. */
class RowFeedTest {

  private static final String HEADER = "record,cultivar,rootstock,outcome\n";

  /** More than fit between the two threads at a time, and no whole number of batches. */
  private static final int ROWS = 20_011;

  @TempDir private Path folder;

  private Path sheet(String name, int rows) throws IOException {
    StringBuilder text = new StringBuilder(HEADER);
    for (int i = 0; i < rows; i++) {
      text.append(name).append(i).append(",Orrin,").append(i % 7).append(",taken\n");
    }
    return Files.writeString(folder.resolve(name + ".csv"), text);
  }

  private static List<RowSource> open(Path... files) {
    return SourceFiles.open(List.of(files), SheetDictionary.parse("none", "{}"));
  }

  private static String words(int source, RawRow row) {
    return source + " " + row.line() + " " + Arrays.toString(row.fields());
  }

  private static List<String> withoutThread(List<RowSource> sources) {
    List<String> all = new ArrayList<>();
    for (int source = 0; source < sources.size(); source++) {
      try (RowSource.Rows rows = sources.get(source).open()) {
        for (RawRow row = rows.next(); row != null; row = rows.next()) {
          all.add(words(source, row));
        }
      }
    }
    return all;
  }

  private static void fed(List<RowSource> sources, List<String> all) {
    try (RowFeed feed = new RowFeed(sources)) {
      for (RowFeed.Batch batch = feed.next(); !batch.last(); batch = feed.next()) {
        int source = batch.source();
        batch.rows().forEach(row -> all.add(words(source, row)));
      }
    }
  }

  @Test
  void rows_of_several_files_come_in_order() throws IOException {
    List<RowSource> sources = open(sheet("b", ROWS), sheet("a", 3), sheet("c", 2 * ROWS));
    List<String> all = new ArrayList<>();
    fed(sources, all);
    assertThat(all).isEqualTo(withoutThread(sources)).hasSize(3 * ROWS + 3);
  }

  @Test
  void what_stops_the_reading_comes_after_the_rows_before_it() throws IOException {
    Path broken = sheet("a", ROWS);
    Files.writeString(broken, Files.readString(broken) + "x,\"Orrin\"s,Ostrey,taken\n");
    List<String> all = new ArrayList<>();
    assertThatThrownBy(() -> fed(open(sheet("b", 5), broken), all))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("line " + (ROWS + 2));
    assertThat(all).hasSizeGreaterThanOrEqualTo(5 + ROWS - 512);
  }
}
