package org.taketally.cells;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.model.TakeModel;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.records.dictionary.BlankResult;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.invented.BenchRecords;

/** The statement of docs/scale.md makes a cells file whose fit is that of the rows. */
class ScaleTest {

  private static final Path PAGE =
      Path.of(System.getProperty("taketally.root"), "docs", "scale.md");
  private static final List<String> COLUMNS =
      List.of(
          "season",
          "site",
          "grafter",
          "cultivar",
          "rootstock",
          "stock_condition",
          "method",
          "bud_stage",
          "storage_days",
          "pairing");

  @TempDir private Path folder;

  private static String statement() throws IOException {
    String page = Files.readString(PAGE);
    int from = page.indexOf("    SELECT season");
    return page.substring(from, page.indexOf("\n\n", from));
  }

  @Test
  void cells_counted_by_a_database_fit_as_the_rows() throws IOException, SQLException {
    Path rows = folder.resolve("S.csv");
    try (Writer out = Files.newBufferedWriter(rows)) {
      BenchRecords.write(BenchRecords.Size.S, 1, out);
    }
    String lost = Files.readString(rows).replaceFirst(",(taken|failed)\n", ",unassessed\n");
    Files.writeString(rows, lost);
    RecordsReader reader = RecordsReader.defaults().withToday(LocalDate.of(2026, 11, 25));
    GraftRecords single =
        reader
            .withDictionary(SheetDictionary.parse("d", "{\"columns\": {\"record\": \"graft_id\"}}"))
            .read(rows);
    Path cells = folder.resolve("cells.csv");
    GraftRecords queried;
    try (Connection database = DriverManager.getConnection("jdbc:duckdb:");
        Statement run = database.createStatement()) {
      run.execute("CREATE VIEW grafts AS SELECT * FROM read_csv('%s')".formatted(rows));
      run.execute("COPY (%s) TO '%s' (HEADER)".formatted(statement(), cells));
      queried = reader.withBlankResult(BlankResult.UNASSESSED).read(database, statement());
    }
    GraftRecords counted = reader.withBlankResult(BlankResult.UNASSESSED).read(cells);
    assertThat(counted.grafts()).isEqualTo(single.grafts()).isEqualTo(1_999);
    assertThat(counted.takes()).isEqualTo(single.takes());
    assertThat(counted.setAside().size()).isZero();
    assertThat(counted.frame().rowCount()).isLessThan(single.frame().rowCount());
    TakeModel model =
        TakeModel.ofTakes()
            .adjustFor("stock_condition", "bud_stage", "method", "storage_days")
            .varyBy("cultivar", "rootstock", "pairing", "grafter", "site", "season");
    double expected = model.fit(CellsOf.records(single, COLUMNS)).logLikelihood();
    assertThat(model.fit(CellsOf.records(counted, COLUMNS)).logLikelihood())
        .isCloseTo(expected, within(1e-8));
    assertThat(model.fit(CellsOf.records(queried, COLUMNS)).logLikelihood())
        .isCloseTo(expected, within(1e-8));
  }
}
