package org.taketally.records.sources;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToIntFunction;
import org.taketally.records.columns.SizeLimits;
import org.taketally.records.dictionary.SheetRules;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** A CSV file: fields between commas, semicolons or tabs, which the heading line decides. */
final class CsvSource implements RowSource {

  private static final char[] DELIMITERS = {',', ';', '\t'};

  private static final int BUFFER = SizeLimits.CELL + (1 << 16);

  private final Path path;
  private final SheetRules rules;
  private final char delimiter;
  private final List<String> headings;
  private final ToIntFunction<List<String>> known;

  /**
   * Looks at the heading line.
   *
   * @param known how many headings of a list the dictionary or we know
   */
  CsvSource(Path path, SheetRules rules, ToIntFunction<List<String>> known) {
    this.path = path;
    this.rules = rules;
    this.known = known;
    Map<Character, List<String>> candidates = new LinkedHashMap<>();
    if (rules.delimiter().isPresent()) {
      candidates.put(rules.delimiter().get(), headings(rules.delimiter().get()));
    } else {
      candidates.putAll(readable());
    }
    char best = candidates.keySet().iterator().next();
    for (char one : candidates.keySet()) {
      best = better(candidates.get(one), candidates.get(best), known) ? one : best;
    }
    this.delimiter = best;
    this.headings = candidates.get(best);
  }

  /**
   * The headings by each delimiter that can part the line: quotation marks around a heading make
   * sense with the right one only.
   */
  private Map<Character, List<String>> readable() {
    Map<Character, List<String>> candidates = new LinkedHashMap<>();
    RecordsUnreadable first = null;
    for (char one : DELIMITERS) {
      try {
        candidates.put(one, headings(one));
      } catch (RecordsUnreadable refused) {
        first = first == null ? refused : first;
      }
    }
    if (candidates.isEmpty()) {
      throw first;
    }
    return candidates;
  }

  private static boolean better(
      List<String> one, List<String> other, ToIntFunction<List<String>> known) {
    int difference = known.applyAsInt(one) - known.applyAsInt(other);
    return difference > 0 || (difference == 0 && one.size() > other.size());
  }

  private List<String> headings(char by) {
    try (CsvRows rows = new CsvRows(by)) {
      RawRow first = rows.from(rules.headingRow());
      if (first == null) {
        throw refused(
            0,
            rules.headingRow() > 1 ? "nothing in line " + rules.headingRow() : "nothing",
            "a line of headings, then one line a graft or batch",
            "check that the right file was named");
      }
      return first.headings();
    }
  }

  @Override
  public String name() {
    return path.toString();
  }

  @Override
  public Optional<Path> path() {
    return Optional.of(path);
  }

  @Override
  public List<String> headings() {
    return headings;
  }

  @Override
  public boolean semicolons() {
    return delimiter == ';';
  }

  @Override
  public Rows open() {
    CsvRows rows = new CsvRows(delimiter);
    rows.from(rules.headingRow());
    return rows;
  }

  @Override
  public long likelyHeadingRow() {
    for (char one : DELIMITERS) {
      try (CsvRows rows = new CsvRows(one)) {
        long line = HeadingSearch.line(rows, known);
        if (line > 1) {
          return line;
        }
      } catch (RecordsUnreadable refused) {
        // this delimiter doesn't part the file: try the next
      }
    }
    return 0;
  }

  private RecordsUnreadable refused(long line, String found, String expected, String remedy) {
    return new RecordsUnreadable(
        new Problem(Severity.ERROR, path.toString(), line, "", found, expected, remedy));
  }

  /** An open file. */
  private final class CsvRows implements Rows {

    private final TextFile.Ended text;
    private final RawRowHandler handler;
    private final CloseableIterator<RawRow> rows;
    private long lastLine = 1;
    private boolean ended;

    CsvRows(char by) {
      text = TextFile.open(path, rules.encoding());
      handler = new RawRowHandler(by);
      rows =
          CsvReader.builder()
              .fieldSeparator(by)
              .acceptCharsAfterQuotes(false)
              .ignoreDifferentFieldCount(true)
              .maxBufferSize(BUFFER)
              .build(handler, text)
              .iterator();
    }

    @Override
    public RawRow next() {
      try {
        while (rows.hasNext()) {
          RawRow row = rows.next();
          if (TextFile.isEnd(row.fields())) {
            ended = true;
          } else if (!row.blank()) {
            lastLine = row.line();
            if (handler.swallowed()) {
              throw refused(
                  row.line(),
                  "a quotation mark that stands alone in a cell, so that the lines up to the next"
                      + " mark are one cell",
                  "quotation marks in pairs",
                  "where it means the same as above, write the name out, or do. (and say which"
                      + " columns under \"fill_down\" in the dictionary)");
            }
            if (text.sawNul()) {
              requireText(row);
            }
            return row;
          }
        }
      } catch (CsvParseException e) {
        throw broken(e);
      } catch (UncheckedIOException e) {
        throw unreadable(e.getCause());
      }
      if (!ended) {
        throw refused(
            lastLine,
            "a quotation mark that opens and never closes",
            "quotation marks in pairs",
            "close it, or take it out, on this line or the next ones");
      }
      return null;
    }

    /** The first row that begins in a line or below it; null if there is none. */
    RawRow from(long line) {
      RawRow row = next();
      while (row != null && row.line() < line) {
        row = next();
      }
      return row;
    }

    /** Refuses a file with NUL in it, which no spreadsheet writes and no program reads back. */
    private void requireText(RawRow row) {
      for (String field : row.fields()) {
        if (TextFile.hasNul(field)) {
          throw refused(
              row.line(),
              "a NUL byte, which no text has",
              "text",
              "save the sheet again as \"CSV UTF-8\" or .xlsx, or take the byte out");
        }
      }
    }

    private RecordsUnreadable broken(CsvParseException e) {
      for (Throwable cause = e; cause != null; cause = cause.getCause()) {
        if (cause instanceof IOException io) {
          return unreadable(io);
        }
      }
      if (isTooLong(e)) {
        return refused(
            lastLine + 1,
            "a cell of more than %,d signs".formatted(SizeLimits.CELL),
            "shorter cells",
            "shorten it; if it is the rest of the file, look for a quotation mark that opens and"
                + " never closes");
      }
      return refused(
          lastLine + 1,
          "more text after a closing quotation mark",
          "quotation marks around whole fields only",
          "on this line or the next ones, close the quotation mark or write \"\" inside a quoted"
              + " field");
    }

    private static boolean isTooLong(Throwable failure) {
      String message = String.valueOf(failure.getMessage());
      return message.contains("maximum buffer size")
          || (failure.getCause() != null && isTooLong(failure.getCause()));
    }

    private RecordsUnreadable unreadable(IOException cause) {
      if (cause instanceof CharacterCodingException) {
        return TextFile.wrongEncoding(path, rules.encoding());
      }
      return refused(
          lastLine, cause.toString(), "a file that can be read to its end", "check the disk");
    }

    @Override
    public void close() {
      try {
        rows.close();
        text.close();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
