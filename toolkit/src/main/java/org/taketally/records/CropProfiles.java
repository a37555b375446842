package org.taketally.records;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.taketally.files.Csv;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.problems.Plain;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.records.sources.FileSigns;
import org.taketally.records.sources.TextFile;
import org.taketally.terms.CropProfile;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** Crop profiles: those that come with the toolkit, and files of your own in the same form. */
public final class CropProfiles {

  private static final List<String> BUNDLED = bundled();
  private static final List<String> COLUMNS = List.of("item", "value", "unit", "source");
  private static final List<String> ITEMS =
      Arrays.stream(CropProfile.Item.values()).map(CropProfiles::name).toList();

  private static final Pattern LINE = Pattern.compile("line (\\d{1,9})");

  private CropProfiles() {}

  /** The names in {@code crops/list.txt}: a new profile is a file and a line there. */
  private static List<String> bundled() {
    try (InputStream in = CropProfiles.class.getResourceAsStream("crops/list.txt")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * The text of a profile to start one of your own from: every item with the value of a like crop.
   *
   * @param like one of {@link #names}
   * @return CSV with the columns {@code item,value,unit,source}, which {@link #load} reads
   * @throws IllegalArgumentException if there is no profile of that name
   */
  public static String template(String like) {
    CropProfile profile = named(like);
    List<List<String>> lines = new ArrayList<>();
    lines.add(COLUMNS);
    for (CropProfile.Item item : CropProfile.Item.values()) {
      boolean name = item == CropProfile.Item.CROP;
      boolean known = name || item == CropProfile.Item.VERSION;
      profile
          .value(item)
          .ifPresent(
              value ->
                  lines.add(
                      List.of(
                          name(item),
                          name ? "my-crop" : value.text(),
                          item.unit(),
                          known
                              ? "name"
                              : "that of " + like + "; put your value and its source here")));
    }
    return Csv.text(lines);
  }

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
      throw new UncheckedIOException(e);
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
    FileSigns.requireSmall(path);
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
        if (row.getFieldCount() != COLUMNS.size()) {
          throw wrong(
              file,
              row.getStartingLineNumber(),
              row.getFieldCount() + " fields",
              "the fields " + String.join(",", COLUMNS),
              "write each under its heading");
        }
        add(file, row, values);
      }
      requireName(file, values);
      requireOrder(file, values);
      return new CropProfile(values);
    } catch (UncheckedIOException | IOException e) {
      throw TextFile.wrongEncoding(Path.of(file), StandardCharsets.UTF_8);
    } catch (CsvParseException e) {
      if (e.getCause() instanceof CharacterCodingException) {
        throw TextFile.wrongEncoding(Path.of(file), StandardCharsets.UTF_8);
      }
      Matcher line = LINE.matcher(String.valueOf(e.getMessage()));
      throw wrong(
          file,
          line.find() ? Long.parseLong(line.group(1)) : 0,
          "quotation marks out of place, or another number of fields",
          "the fields " + String.join(",", COLUMNS),
          "put the marks right, around whole fields only");
    } catch (IllegalArgumentException e) {
      throw wrong(
          file,
          0,
          e.getMessage(),
          "a whole profile",
          "start from what \"taketally crop template\" writes");
    }
  }

  private static void requireName(String file, Map<CropProfile.Item, CropProfile.Value> values) {
    for (CropProfile.Item needed : List.of(CropProfile.Item.CROP, CropProfile.Item.VERSION)) {
      if (!values.containsKey(needed)) {
        throw wrong(
            file,
            0,
            "no line " + name(needed),
            "the lines crop and version",
            "add it; \"taketally crop template\" writes a whole profile to start from");
      }
    }
  }

  /** An item as files name it. */
  private static String name(CropProfile.Item item) {
    return item.name().toLowerCase(Locale.ROOT);
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
                        "an item of " + String.join(", ", ITEMS),
                        NameLikeness.nearest(row.getField(0), ITEMS)
                                .map(near -> "did you mean " + near + "? else ")
                                .orElse("")
                            + "correct the name or take the line out"));
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
    requireRange(file, line, item, row.getField(1));
    CropProfile.Value value = new CropProfile.Value(row.getField(1), row.getField(3));
    if (values.put(item, value) != null) {
      throw wrong(file, line, row.getField(0), "each item once", "take out one of the lines");
    }
  }

  /** Smallest and largest value that makes sense in a unit. */
  private enum Range {
    SHARE("share", 0, 1, "write 5 % as 0.05"),
    DAYS("days", 0, 3650, "count the days"),
    GRAFTS("grafts", 1, 1_000_000, "count the grafts"),
    CELSIUS("°C", -40, 50, "convert it to degrees Celsius");

    private final String unit;
    private final double low;
    private final double high;
    private final String remedy;

    Range(String unit, double low, double high, String remedy) {
      this.unit = unit;
      this.low = low;
      this.high = high;
      this.remedy = remedy;
    }
  }

  private static void requireRange(String file, long line, CropProfile.Item item, String text) {
    for (Range range : Range.values()) {
      if (range.unit.equals(item.unit())) {
        double number = number(text);
        if (!(number >= range.low && number <= range.high)) {
          throw wrong(
              file,
              line,
              text,
              "a number from %s to %s (%s) for %s"
                  .formatted(
                      Plain.number(range.low),
                      Plain.number(range.high),
                      range.unit,
                      item.name().toLowerCase(Locale.ROOT)),
              range.remedy);
        }
      }
    }
  }

  private static double number(String text) {
    try {
      return Double.parseDouble(text);
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  /** Lower limits that may not be above upper ones. */
  private static void requireOrder(String file, Map<CropProfile.Item, CropProfile.Value> values) {
    List<List<CropProfile.Item>> pairs =
        List.of(
            List.of(CropProfile.Item.STORAGE_TEMP_MIN, CropProfile.Item.STORAGE_TEMP_MAX),
            List.of(CropProfile.Item.STORAGE_DAYS_BEST, CropProfile.Item.STORAGE_DAYS_LIMIT),
            List.of(CropProfile.Item.ASSESS_EARLY, CropProfile.Item.ASSESS_FINAL),
            List.of(CropProfile.Item.TAKE_LOW, CropProfile.Item.TAKE_HIGH),
            List.of(CropProfile.Item.LATE_LOSS_LOW, CropProfile.Item.LATE_LOSS_HIGH));
    for (List<CropProfile.Item> pair : pairs) {
      CropProfile.Value low = values.get(pair.get(0));
      CropProfile.Value high = values.get(pair.get(1));
      if (low != null && high != null && number(low.text()) > number(high.text())) {
        throw wrong(
            file,
            0,
            "%s %s, %s %s".formatted(name(pair.get(0)), low.text(), name(pair.get(1)), high.text()),
            "the first no larger than the second",
            "swap or correct them");
      }
    }
  }

  private static Optional<CropProfile.Item> item(String name) {
    return Arrays.stream(CropProfile.Item.values())
        .filter(item -> name(item).equals(name))
        .findFirst();
  }

  private static RecordsUnreadable wrong(
      String file, long line, String found, String expected, String remedy) {
    return new RecordsUnreadable(
        new Problem(Severity.ERROR, file, line, "", found, expected, remedy));
  }
}
