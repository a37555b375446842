package org.taketally.app;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Driver;
import java.sql.SQLException;
import java.util.Properties;
import java.util.ServiceLoader;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** A database that records are asked of, by a JDBC driver that is there or in a jar named. */
final class Database implements AutoCloseable {

  private static final String DRIVERS =
      "name the jar of its driver with --driver (for DuckDB and Parquet: duckdb_jdbc, from Maven"
          + " Central, org.duckdb)";

  /** Where a jar says which driver is in it. */
  private static final String SERVICE = "META-INF/services/java.sql.Driver";

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
    if (driver != null) {
      requireJar(command, driver);
    }
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

  /** Says so where a file isn't a jar: else its database would seem to be the wrong one. */
  private static void requireJar(CommandLine command, Path driver) throws IOException {
    String found = null;
    try (ZipFile zip = new ZipFile(driver.toFile())) {
      if (zip.getEntry(SERVICE) == null) {
        found = "a jar without a JDBC driver";
      }
    } catch (ZipException | FileNotFoundException other) {
      found = "no jar";
    }
    if (found != null) {
      throw new ParameterException(
          command,
          "--driver %s: found %s, expected the jar that the maker of the database gives for JDBC (for DuckDB: duckdb_jdbc-VERSION.jar)"
              .formatted(driver, found));
    }
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
