package org.taketally.records;

import static org.assertj.core.api.Assertions.assertThat;

import tech.tablesaw.api.Table;

/** Whether the same records came from elsewhere. */
final class SameTable {

  private SameTable() {}

  static void assertSame(Table found, Table expected) {
    assertThat(found.columnNames()).isEqualTo(expected.columnNames());
    assertThat(found.rowCount()).isEqualTo(expected.rowCount());
    for (String column : expected.columnNames()) {
      assertThat(found.column(column).asList())
          .as(column)
          .isEqualTo(expected.column(column).asList());
    }
  }
}
