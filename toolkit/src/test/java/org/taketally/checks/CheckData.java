package org.taketally.checks;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The historic counts under {@code src/test/resources/checks}. */
public final class CheckData {

  private CheckData() {}

  /**
   * The rows of one data file.
   *
   * @param file file name, e.g. {@code plum_cuttings.csv}
   * @return rows in file order, fields by column name
   */
  public static List<NamedCsvRecord> rows(String file) {
    try (InputStream stream = CheckData.class.getResourceAsStream("/checks/" + file);
        CsvReader<NamedCsvRecord> reader =
            CsvReader.builder()
                .ofNamedCsvRecord(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
      return reader.stream().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * The text of one file.
   *
   * @param file file name
   * @return the whole text
   */
  static String text(String file) {
    try (InputStream stream = CheckData.class.getResourceAsStream("/checks/" + file)) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * A whole number of a row.
   *
   * @param row a row of a data file
   * @param column column name
   * @return the number
   */
  public static int whole(NamedCsvRecord row, String column) {
    return Integer.parseInt(row.getField(column));
  }
}
