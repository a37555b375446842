package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** A database query, and through it a Parquet file, gives the records their CSV gives. */
class QueryTest {

  private static final Path WALNUT =
      Path.of(System.getProperty("taketally.root"), "datasets/halden-bay-walnut/grafts-2023.csv");
  private static final RecordsReader READER =
      RecordsReader.defaults()
          .withCrop(CropProfiles.named("walnut"))
          .withToday(LocalDate.of(2026, 11, 25));

  @TempDir Path folder;
  private Connection database;

  @BeforeEach
  void open() throws SQLException {
    database = DriverManager.getConnection("jdbc:duckdb:");
  }

  @AfterEach
  void close() throws SQLException {
    database.close();
  }

  private void run(String statement) throws SQLException {
    try (Statement s = database.createStatement()) {
      s.execute(statement);
    }
  }

  /** Columns have the database's own types: days, whole numbers, decimals. */
  @Test
  void a_table_and_a_parquet_file_read_as_the_csv() throws SQLException {
    run(
        "CREATE TABLE grafts AS SELECT * FROM read_csv('%s', header = true, types = {'season':"
                .formatted(WALNUT)
            + " 'VARCHAR'})");
    Path parquet = folder.resolve("grafts.parquet");
    run("COPY grafts TO '%s' (FORMAT parquet)".formatted(parquet));
    GraftRecords csv = READER.read(List.of(WALNUT));
    for (String from : List.of("grafts", "'" + parquet + "'")) {
      GraftRecords query = READER.read(database, "SELECT * FROM " + from);
      SameTable.assertSame(query.frame(), csv.frame());
      assertThat(query.takes()).isEqualTo(csv.takes()).isPositive();
    }
  }

  @Test
  void rows_that_cannot_be_used_are_named_by_their_number_in_the_result() {
    GraftRecords records =
        READER.read(
            database,
            "SELECT * FROM (VALUES ('Orrin', 'Linnock', 10, 4), ('Orrin', NULL, 10, 4),"
                + " ('Orrin', 'Linnock', 10, 11)) AS t(cultivar, rootstock, grafts, takes)");
    assertThat(records.provenance().rowsRead()).isEqualTo(3);
    assertThat(records.setAside().size()).isEqualTo(2);
    assertThat(records.problems())
        .filteredOn(problem -> problem.severity() == Severity.ERROR)
        .extracting(Problem::sentence)
        .containsExactly(
            "query line 2, column rootstock: found \"\", expected a name; fill it in; if it isn't"
                + " known, write \"unknown\"",
            "query line 3, column takes: found \"11\", expected a whole number from 0 to 10"
                + " (grafts); correct takes or grafts");
  }

  /** A decimal number of the database has no decimal sign to doubt. */
  @Test
  void decimals_are_exact() {
    GraftRecords records =
        READER.read(
            database,
            "SELECT 'Orrin' AS cultivar, 'Linnock' AS rootstock, 'taken' AS outcome, CAST(6.125 AS"
                + " DECIMAL(6, 3)) AS storage_temp_c, DATE '2025-03-04' AS graft_date");
    assertThat(records.frame().doubleColumn("storage_temp_c").get(0)).isEqualTo(6.125);
    assertThat(records.frame().dateColumn("graft_date").get(0)).isEqualTo(LocalDate.of(2025, 3, 4));
  }

  @Test
  void a_query_the_database_refuses_is_one_sentence() {
    assertThatThrownBy(() -> READER.read(database, "SELECT * FROM nowhere"))
        .isInstanceOf(RecordsUnreadable.class)
        .hasMessageContaining("nowhere")
        .hasMessageContaining("expected a query that the database can answer")
        .hasMessageEndingWith("try it in the database's own program first: SELECT * FROM nowhere");
  }
}
