package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.rows.RowVisitor;
import org.taketally.terms.Problem;

/** Looking through rows finds what holding them finds, and long sheets are read as short ones. */
class CheckStreamsTest {

  /** More texts in a column than a reader remembers. */
  private static final int ROWS = 140_000;

  @TempDir private Path folder;

  private static final RecordsReader READER =
      RecordsReader.defaults().withToday(LocalDate.of(2026, 11, 25));

  private Path sheet() throws IOException {
    StringBuilder text =
        new StringBuilder("record,tag,cultivar,rootstock,season,graft_date,grafts,takes\n");
    for (int i = 0; i < ROWS; i++) {
      String label = i % 9_973 == 9_000 ? "r0" : "r" + i;
      String day = i % 20_001 == 7 ? "31.02.2024" : "2024-0" + (1 + i % 9) + "-1" + i % 10;
      String season = i % 30_011 == 11 ? "2019" : "2024";
      int takes = i % 15_013 == 5 ? 4 : i % 3 == 0 ? 1 : 0;
      text.append(label + ",t" + i + ",cv" + i % 31 + ",rs" + i % 4 + "," + season);
      text.append("," + day + ",1," + takes + "\n");
    }
    text.append("r").append(ROWS).append(",t,cv1,rs1,2024,2024-03-04,120,120\n");
    return Files.writeString(folder.resolve("long.csv"), text);
  }

  @Test
  void problems_and_counts_are_those_of_rows_held() throws IOException {
    Path file = sheet();
    RecordsCheck seen = READER.scan(List.of(file), List.of(), RowVisitor.NONE);
    RecordsCheck held = READER.read(file).check();
    assertThat(seen.problems()).isEqualTo(held.problems());
    assertThat(seen.summary().groups()).isEqualTo(held.summary().groups());
    assertThat(seen.provenance()).isEqualTo(held.provenance());
    assertThat(seen.seasons()).isEqualTo(held.seasons());
    assertThat(seen.takes()).isEqualTo(held.takes());
  }

  /** The faults planted, by line: what is above stays above, whoever read it when. */
  @Test
  void faults_come_where_they_were_planted_and_in_order() throws IOException {
    RecordsCheck seen = READER.scan(List.of(sheet()), List.of(), RowVisitor.NONE);
    assertThat(lines(seen, "takes")).containsExactlyElementsOf(planted(15_013, 5)).hasSize(10);
    assertThat(lines(seen, "record")).containsExactlyElementsOf(planted(9_973, 9_000)).hasSize(14);
    assertThat(lines(seen, "season")).containsExactlyElementsOf(planted(30_011, 11)).hasSize(5);
    assertThat(lines(seen, "graft_date")).containsExactlyElementsOf(planted(20_001, 7)).hasSize(7);
    assertThat(seen.provenance().rowsSetAside()).isEqualTo(10 + 14);
  }

  private static List<Long> lines(RecordsCheck check, String column) {
    return check.problems().stream()
        .filter(problem -> problem.column().equals(column) && problem.line() > 1)
        .map(Problem::line)
        .toList();
  }

  private static List<Long> planted(int every, int from) {
    return java.util.stream.LongStream.iterate(from, i -> i < ROWS, i -> i + every)
        .mapToObj(i -> i + 2)
        .toList();
  }

  @Test
  void an_own_column_of_labels_is_kept_to_its_end() throws IOException {
    GraftRecords records = READER.read(sheet());
    List<String> tags = records.frame().stringColumn("tag").asList();
    assertThat(tags)
        .hasSize(Math.toIntExact(records.provenance().rowsKept()))
        .doesNotHaveDuplicates();
    assertThat(tags.get(tags.size() - 2)).isEqualTo("t" + (ROWS - 1));
  }
}
