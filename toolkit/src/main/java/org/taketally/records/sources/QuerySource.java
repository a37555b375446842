package org.taketally.records.sources;

import java.math.BigDecimal;
import java.sql.Connection;
import java.sql.Date;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Timestamp;
import java.util.ArrayList;
import java.util.List;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** The rows a database query gives. */
public final class QuerySource implements RowSource {

  private final Connection connection;
  private final String query;
  private final List<String> headings;

  public QuerySource(Connection connection, String query) {
    this.connection = connection;
    this.query = query;
    try (QueryRows rows = new QueryRows()) {
      this.headings = rows.names();
    }
  }

  @Override
  public String name() {
    return "query";
  }

  @Override
  public List<String> headings() {
    return headings;
  }

  @Override
  public Rows open() {
    return new QueryRows();
  }

  private RecordsUnreadable failed(SQLException e) {
    return new RecordsUnreadable(
        new Problem(
            Severity.ERROR,
            name(),
            0,
            "",
            String.valueOf(e.getMessage()),
            "a query that the database can answer",
            "try it in the database's own program first: " + query));
  }

  /** A running query. */
  private final class QueryRows implements Rows {

    private final Statement statement;
    private final ResultSet results;
    private final int columns;
    private long row;

    QueryRows() {
      try {
        statement = connection.createStatement();
        results = statement.executeQuery(query);
        columns = results.getMetaData().getColumnCount();
      } catch (SQLException e) {
        throw failed(e);
      }
    }

    List<String> names() {
      try {
        ResultSetMetaData data = results.getMetaData();
        List<String> names = new ArrayList<>();
        for (int i = 1; i <= columns; i++) {
          names.add(Trim.trim(data.getColumnLabel(i)));
        }
        return List.copyOf(names);
      } catch (SQLException e) {
        throw failed(e);
      }
    }

    @Override
    public RawRow next() {
      try {
        while (results.next()) {
          RawRow raw = raw();
          if (!raw.blank()) {
            return raw;
          }
        }
        return null;
      } catch (SQLException e) {
        throw failed(e);
      }
    }

    private RawRow raw() throws SQLException {
      String[] fields = new String[columns];
      boolean[] exact = new boolean[columns];
      for (int i = 0; i < columns; i++) {
        Object value = results.getObject(i + 1);
        fields[i] = text(value);
        exact[i] = value instanceof Number;
      }
      row++;
      return new RawRow(row, fields, exact);
    }

    @Override
    public void close() {
      try {
        statement.close();
      } catch (SQLException e) {
        throw failed(e);
      }
    }
  }

  private static String text(Object value) {
    if (value == null) {
      return "";
    }
    if (value instanceof Date date) {
      return date.toLocalDate().toString();
    }
    if (value instanceof Timestamp time) {
      return time.toLocalDateTime().toString();
    }
    if (value instanceof BigDecimal number) {
      return number.toPlainString();
    }
    return value.toString();
  }
}
