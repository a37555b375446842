package org.taketally.app;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Driver;
import java.sql.SQLException;
import java.util.Properties;
import java.util.ServiceLoader;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** A database that records are asked of, by a JDBC driver that is there or in a jar named. */
final class Database implements AutoCloseable {

  private static final String DRIVERS =
      "name the jar of its driver with --driver (for DuckDB and Parquet: duckdb_jdbc, from Maven"
          + " Central, org.duckdb)";

  private final URLClassLoader jar;
  private final Connection connection;

  private Database(URLClassLoader jar, Connection connection) {
    this.jar = jar;
    this.connection = connection;
  }

  /**
   * Opens a database.
   *
   * @param url as its maker says, {@code jdbc:...}
   * @param driver jar with its driver; null if the driver is there already
   */
  static Database open(CommandLine command, String url, Path driver) throws IOException {
    URL[] jars = driver == null ? new URL[0] : new URL[] {driver.toUri().toURL()};
    URLClassLoader jar = new URLClassLoader(jars, Database.class.getClassLoader());
    try {
      for (Driver one : ServiceLoader.load(Driver.class, jar)) {
        Connection opened = one.acceptsURL(url) ? one.connect(url, new Properties()) : null;
        if (opened != null) {
          return new Database(jar, opened);
        }
      }
    } catch (SQLException refused) {
      jar.close();
      throw new CannotCompute(
          "the database at %s can't be opened: %s".formatted(url, firstLine(refused)));
    }
    jar.close();
    throw new ParameterException(
        command,
        "found --url %s, expected a database a driver is there for; %s".formatted(url, DRIVERS));
  }

  private static String firstLine(SQLException refused) {
    return String.valueOf(refused.getMessage()).lines().findFirst().orElse("");
  }

  Connection connection() {
    return connection;
  }

  @Override
  public void close() throws IOException {
    try {
      connection.close();
    } catch (SQLException late) {
      // Everything was read; what goes wrong afterwards concerns nobody.
    }
    jar.close();
  }
}
