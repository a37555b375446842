package org.taketally.terms;

import java.util.Objects;
import java.util.regex.Pattern;

/**
 * Something wrong, or worth a look, in a file of records: place, found, expected, remedy.
 *
 * @param severity whether the row is set aside, used but to be checked, or only noted
 * @param file the file as the user named it
 * @param line 1-based line in the file (row in a sheet), or 0 if it concerns the whole file
 * @param column the column as spelt in the file, or empty if no single column is concerned
 * @param found what stands there, as typed
 * @param expected what would have been right
 * @param remedy what the person can do
 */
public record Problem(
    Severity severity,
    String file,
    long line,
    String column,
    String found,
    String expected,
    String remedy) {

  /** Signs of a cell that are shown in a sentence. */
  private static final int SHOWN = 300;

  private static final Pattern LINE_BREAK = Pattern.compile("\\R");

  public Problem {
    Objects.requireNonNull(severity, "severity");
    Objects.requireNonNull(file, "file");
    Objects.requireNonNull(column, "column");
    Objects.requireNonNull(found, "found");
    Objects.requireNonNull(expected, "expected");
    Objects.requireNonNull(remedy, "remedy");
    if (line < 0) {
      throw new IllegalArgumentException("line must be 0 or more, got " + line);
    }
  }

  /**
   * The problem in one sentence, as printed.
   *
   * @return e.g. {@code walnut-2024.csv line 17, column takes: found "14", expected a whole number
   *     from 0 to 12 (grafts); correct the count and read the file again}
   */
  public String sentence() {
    StringBuilder text = new StringBuilder(file);
    if (line > 0) {
      text.append(" line ").append(line);
    }
    if (!column.isEmpty()) {
      text.append(", column ").append(column);
    }
    text.append(": found ").append('"').append(foundInOneLine()).append('"');
    if (!expected.isEmpty()) {
      text.append(", expected ").append(expected);
    }
    if (!remedy.isEmpty()) {
      text.append("; ").append(remedy);
    }
    return inOneLine(text.toString());
  }

  /**
   * What was found, to be printed within a sentence.
   *
   * @return line breaks within a cell shown as a sign, and no more than its beginning if it is long
   */
  public String foundInOneLine() {
    String shown = found.length() > SHOWN ? found.substring(0, SHOWN) + "..." : found;
    return inOneLine(shown);
  }

  private static String inOneLine(String text) {
    return LINE_BREAK.matcher(text).replaceAll("↵");
  }
}
