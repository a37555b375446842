package org.taketally.records.sources;

import java.util.Arrays;
import java.util.List;

/**
 * One row as a source gives it.
 *
 * @param line 1-based line where it starts, or row of a sheet or query
 * @param fields as typed; in the source's order of columns
 * @param exact which fields the source itself holds as numbers or dates; null if none
 * @param continued whether every name that stands once for the rows below came from above
 */
public record RawRow(long line, String[] fields, boolean[] exact, boolean continued) {

  RawRow(long line, String[] fields, boolean[] exact) {
    this(line, fields, exact, false);
  }

  public boolean exact(int field) {
    return exact != null && exact[field];
  }

  /** The fields as headings: without space around them. */
  List<String> headings() {
    return Arrays.stream(fields).map(Trim::trim).map(RawRow::unquoted).toList();
  }

  /** A heading without the curly quotation marks that word processors put around it. */
  private static String unquoted(String heading) {
    boolean curly =
        heading.length() > 2
            && "“„‘‚«".indexOf(heading.charAt(0)) >= 0
            && "”“’‘»".indexOf(heading.charAt(heading.length() - 1)) >= 0;
    return curly ? Trim.trim(heading.substring(1, heading.length() - 1)) : heading;
  }

  boolean blank() {
    for (String field : fields) {
      if (!Trim.isBlank(field)) {
        return false;
      }
    }
    return true;
  }
}
