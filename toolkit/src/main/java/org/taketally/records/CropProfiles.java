package org.taketally.records;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.taketally.terms.CropProfile;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** Crop profiles: those that come with the toolkit, and files of your own in the same form. */
public final class CropProfiles {

  private static final List<String> BUNDLED = List.of("avocado", "walnut");
  private static final List<String> COLUMNS = List.of("item", "value", "unit", "source");

  private CropProfiles() {}

  /**
   * The names of the profiles that come with the toolkit.
   *
   * @return in alphabetical order
   */
  public static List<String> names() {
    return BUNDLED;
  }

  /**
   * A profile that comes with the toolkit.
   *
   * @param name one of {@link #names}
   * @return the profile
   * @throws IllegalArgumentException if there is none of that name
   */
  public static CropProfile named(String name) {
    if (!BUNDLED.contains(name)) {
      throw new IllegalArgumentException(
          "no crop profile \"%s\"; there are %s, or name a file of your own"
              .formatted(name, String.join(", ", BUNDLED)));
    }
    try (InputStream in = CropProfiles.class.getResourceAsStream("crops/" + name + ".csv")) {
      return read(name, new InputStreamReader(in, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /**
   * A profile of your own.
   *
   * @param path CSV, UTF-8, with the columns {@code item,value,unit,source}
   * @return the profile
   * @throws RecordsUnreadable if it can't be read, naming line, found, expected and remedy
   */
  public static CropProfile load(Path path) {
    FileSigns.form(path, false);
    try (Reader text = TextFile.openPlain(path, StandardCharsets.UTF_8)) {
      return read(path.toString(), text);
    } catch (IOException e) {
      throw TextFile.wrongEncoding(path, StandardCharsets.UTF_8);
    }
  }

  private static CropProfile read(String file, Reader text) {
    Map<CropProfile.Item, CropProfile.Value> values = new EnumMap<>(CropProfile.Item.class);
    try (CsvReader<NamedCsvRecord> rows =
        CsvReader.builder().ignoreDifferentFieldCount(false).ofNamedCsvRecord(text)) {
      for (NamedCsvRecord row : rows) {
        if (!row.getHeader().equals(COLUMNS)) {
          throw wrong(file, 1, row.getHeader().toString(), "columns " + COLUMNS, "rename them");
        }
        add(file, row, values);
      }
      return new CropProfile(values);
    } catch (CsvParseException | IOException e) {
      throw wrong(file, 0, e.getMessage(), "columns " + COLUMNS + " in UTF-8", "save it again");
    } catch (IllegalArgumentException e) {
      throw wrong(file, 0, e.getMessage(), "a whole profile", "see docs/records.md");
    }
  }

  private static void add(
      String file, NamedCsvRecord row, Map<CropProfile.Item, CropProfile.Value> values) {
    long line = row.getStartingLineNumber();
    CropProfile.Item item =
        item(row.getField(0))
            .orElseThrow(
                () ->
                    wrong(
                        file,
                        line,
                        row.getField(0),
                        "an item of " + Arrays.toString(CropProfile.Item.values()),
                        "correct the name or take the line out"));
    if (!row.getField(2).equals(item.unit())) {
      throw wrong(file, line, row.getField(2), "unit " + item.unit(), "convert the value");
    }
    if (row.getField(1).isBlank() || row.getField(3).isBlank()) {
      throw wrong(
          file,
          line,
          String.join(",", row.getFields()),
          "a value and its source",
          "where there is none, write \"common practice, no source\" or \"from memory\"");
    }
    CropProfile.Value value = new CropProfile.Value(row.getField(1), row.getField(3));
    if (values.put(item, value) != null) {
      throw wrong(file, line, row.getField(0), "each item once", "take out one of the lines");
    }
  }

  private static Optional<CropProfile.Item> item(String name) {
    return Arrays.stream(CropProfile.Item.values())
        .filter(item -> item.name().toLowerCase(Locale.ROOT).equals(name))
        .findFirst();
  }

  private static RecordsUnreadable wrong(
      String file, long line, String found, String expected, String remedy) {
    return new RecordsUnreadable(
        new Problem(Severity.ERROR, file, line, "", found, expected, remedy));
  }
}
