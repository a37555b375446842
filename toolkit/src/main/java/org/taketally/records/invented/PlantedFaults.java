package org.taketally.records.invented;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Faults to plant in the messy sheets: the file {@code planted-faults.csv} says where each stands
 * and what stands there.
 */
final class PlantedFaults {

  private PlantedFaults() {}

  /**
   * One fault.
   *
   * @param file the sheet
   * @param line line in the finished sheet, the header is 1
   * @param column heading in the sheet; empty if the whole line is wrong
   * @param typed what stands there; the whole line if {@code column} is empty
   * @param severity error, check or note; empty if it is part of another fault in the line
   * @param fault what is wrong, in words
   * @param reported what reading says it found
   */
  record Fault(
      String file,
      int line,
      String column,
      String typed,
      String severity,
      String fault,
      String reported) {

    void plantIn(TextSheet sheet, char separator) {
      if (column.isEmpty()) {
        String between = Pattern.quote(String.valueOf(separator));
        sheet.replace(line, List.of(typed.split(between, -1)));
      } else {
        sheet.set(line, column, typed);
      }
    }
  }

  /** The faults in the order of lines. */
  static List<Fault> bundled() {
    try (Reader reader =
        new InputStreamReader(
            BundledDatasets.open(BundledDatasets.AVOCADO_MESSY, "planted-faults.csv"),
            StandardCharsets.UTF_8)) {
      return CsvReader.builder().ofNamedCsvRecord(reader).stream()
          .map(PlantedFaults::fault)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Fault fault(NamedCsvRecord row) {
    return new Fault(
        row.getField("file"),
        Integer.parseInt(row.getField("line")),
        row.getField("column"),
        row.getField("typed"),
        row.getField("severity"),
        row.getField("fault"),
        row.getField("reported").isEmpty() ? row.getField("typed") : row.getField("reported"));
  }
}
