package org.taketally.files;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Lines of comma-separated values in which no spreadsheet finds a formula. */
public final class Csv implements AutoCloseable {

  private final CsvWriter csv;

  private Csv(Writer out) {
    csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out);
  }

  /**
   * Lines for a writer.
   *
   * @param out where to; closed with this
   * @return the lines, none yet
   */
  public static Csv to(Writer out) {
    return new Csv(out);
  }

  /**
   * Lines as text.
   *
   * @param lines cells of each, headings first
   * @return text ending in a line feed
   */
  public static String text(List<List<String>> lines) {
    StringWriter text = new StringWriter();
    try (Csv csv = to(text)) {
      lines.forEach(csv::add);
    }
    return text.toString();
  }

  /**
   * Adds a line.
   *
   * @param cells what they are to show
   * @throws UncheckedIOException if it can't be written
   */
  public void add(Iterable<String> cells) {
    List<String> neutral = new ArrayList<>();
    cells.forEach(cell -> neutral.add(Formulas.neutral(cell)));
    csv.writeRecord(neutral);
  }

  /**
   * Adds a line.
   *
   * @param cells what they are to show
   * @throws UncheckedIOException if it can't be written
   */
  public void add(String... cells) {
    add(Arrays.asList(cells));
  }

  /**
   * Hands on what is kept back so far.
   *
   * @throws IOException if it can't be written
   */
  public void flush() throws IOException {
    csv.flush();
  }

  @Override
  public void close() {
    try {
      csv.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
