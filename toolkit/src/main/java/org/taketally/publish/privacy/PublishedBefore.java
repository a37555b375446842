package org.taketally.publish.privacy;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.files.ControlSigns;
import org.taketally.files.Csv;
import org.taketally.files.Formulas;

/**
 * What has been published so far: the counts of every page, and no name of a person or place.
 *
 * @param pages in the order they were made
 */
public record PublishedBefore(List<EarlierPage> pages) {

  private static final List<String> HEADER =
      List.of("page", "seasons", "table", "column", "kind", "level", "grafts", "takes");
  private static final String SEASONS_APART = " | ";

  public PublishedBefore {
    pages = List.copyOf(pages);
  }

  /** What a line holds. */
  public enum Kind {
    /** All grafts of the seasons of its table. */
    ALL,
    /** One level. */
    LEVEL,
    /** Every level of the table that doesn't stand by itself, counted together. */
    OTHERS
  }

  /**
   * A published line.
   *
   * @param table name of the table
   * @param column whose levels it lists; empty for {@link Kind#ALL}
   * @param seasons the seasons its table is about, an empty name for grafts without one
   * @param kind what it holds
   * @param level the level; empty for other kinds, and where it isn't recorded
   * @param grafts grafts assessed, 1 or more
   * @param takes grafts that took, 0 to {@code grafts}
   */
  public record Line(
      String table,
      String column,
      List<String> seasons,
      Kind kind,
      String level,
      long grafts,
      long takes) {

    public Line {
      seasons = List.copyOf(seasons);
      if (takes < 0 || takes > grafts || grafts < 1) {
        throw new IllegalArgumentException(
            "a published line must hold 0 to %d takes, got %d".formatted(grafts, takes));
      }
    }
  }

  /**
   * A page.
   *
   * @param lines all its counts
   */
  public record EarlierPage(List<Line> lines) {

    public EarlierPage {
      lines = List.copyOf(lines);
    }

    /** Every season some line is about. */
    List<String> seasons() {
      return lines.stream().flatMap(line -> line.seasons().stream()).distinct().toList();
    }
  }

  /**
   * Nothing yet.
   *
   * @return no pages
   */
  public static PublishedBefore nothing() {
    return new PublishedBefore(List.of());
  }

  /**
   * With one page more; a page that says the same as an earlier one adds nothing.
   *
   * @param page what is published now
   * @return all pages
   */
  public PublishedBefore and(EarlierPage page) {
    if (pages.contains(page)) {
      return this;
    }
    List<EarlierPage> all = new ArrayList<>(pages);
    all.add(page);
    return new PublishedBefore(all);
  }

  /**
   * As a file.
   *
   * @return CSV with a header, one line for each published one
   */
  public String csv() {
    StringWriter out = new StringWriter();
    try (Csv csv = Csv.to(out)) {
      csv.add(HEADER);
      for (int p = 0; p < pages.size(); p++) {
        for (Line line : pages.get(p).lines()) {
          csv.add(
              Integer.toString(p + 1),
              ControlSigns.reversible(String.join(SEASONS_APART, line.seasons())),
              ControlSigns.reversible(line.table()),
              ControlSigns.reversible(line.column()),
              line.kind().name().toLowerCase(java.util.Locale.ROOT),
              ControlSigns.reversible(line.level()),
              Long.toString(line.grafts()),
              Long.toString(line.takes()));
        }
      }
    }
    return out.toString();
  }

  /**
   * From such a file.
   *
   * @param csv what {@link #csv} wrote
   * @return the pages
   * @throws IllegalArgumentException if it is no such file
   */
  public static PublishedBefore read(String csv) {
    Map<String, List<Line>> pages = new LinkedHashMap<>();
    try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(csv)) {
      for (NamedCsvRecord row : reader) {
        pages.computeIfAbsent(row.getField("page"), page -> new ArrayList<>()).add(line(row));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (RuntimeException notOurs) {
      throw new IllegalArgumentException(
          "not a list of what was published: expected the columns "
              + String.join(", ", HEADER)
              + " as this program writes them",
          notOurs);
    }
    return new PublishedBefore(pages.values().stream().map(EarlierPage::new).toList());
  }

  private static Line line(NamedCsvRecord row) {
    return new Line(
        typed(row, "table"),
        typed(row, "column"),
        List.of(typed(row, "seasons").split(java.util.regex.Pattern.quote(SEASONS_APART), -1)),
        Kind.valueOf(row.getField("kind").toUpperCase(java.util.Locale.ROOT)),
        typed(row, "level"),
        Long.parseLong(row.getField("grafts")),
        Long.parseLong(row.getField("takes")));
  }

  /** As it stood in the records. */
  private static String typed(NamedCsvRecord row, String field) {
    return ControlSigns.typed(Formulas.typed(row.getField(field)));
  }
}
