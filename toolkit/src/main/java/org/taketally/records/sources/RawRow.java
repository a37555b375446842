package org.taketally.records.sources;

import java.util.Arrays;
import java.util.List;
import org.taketally.records.columns.Remarks;

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
  public List<String> headings() {
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

  /** The only field with anything in it, or -1 if there are several or none. */
  public int lone() {
    int lone = -1;
    for (int i = 0; i < fields.length; i++) {
      if (!Trim.isBlank(fields[i])) {
        if (lone >= 0) {
          return -1;
        }
        lone = i;
      }
    }
    return lone;
  }

  /** Whether a remark stands in the row and nothing else. */
  public boolean remark() {
    int lone = lone();
    return lone >= 0 && fields.length > 1 && Remarks.isRemark(Trim.trim(fields[lone]));
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
