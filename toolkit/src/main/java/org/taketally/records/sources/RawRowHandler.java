package org.taketally.records.sources;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import de.siegmar.fastcsv.reader.RecordWrapper;
import java.util.Arrays;
import org.taketally.records.columns.SizeLimits;

/**
 * Makes a {@link RawRow} of each line. A field equal to the one above it becomes the same string,
 * which is common in records of batches and saves memory and time.
 */
final class RawRowHandler extends AbstractBaseCsvCallbackHandler<RawRow> {

  /** One more than a sheet may have, so that too many are seen. */
  private static final int COUNTED = SizeLimits.COLUMNS + 1;

  private String[] above = {};
  private String[] fields = {};
  private int count;
  private boolean swallowed;
  private final char delimiter;

  RawRowHandler(char delimiter) {
    this.delimiter = delimiter;
  }

  /**
   * Whether a quotation mark of the row read last stands alone in its cell, as a ditto mark does,
   * so that what follows it up to the next mark was taken for one cell.
   */
  boolean swallowed() {
    return swallowed;
  }

  @Override
  protected void handleBegin(long startingLineNumber) {
    above = fields;
    fields = new String[above.length];
    count = 0;
    swallowed = false;
  }

  @Override
  protected void handleField(int index, char[] buffer, int offset, int length, boolean quoted) {
    if (index > COUNTED) {
      return; // too many columns are refused by the headings, too many fields by the row
    }
    if (index >= fields.length) {
      fields = Arrays.copyOf(fields, Math.max(8, 2 * index));
    }
    swallowed |= quoted && length > 1 && isRest(buffer, offset, length);
    boolean same = index < above.length && equal(above[index], buffer, offset, length);
    fields[index] = same ? above[index] : new String(buffer, offset, length);
    count = index + 1;
  }

  /** Begins with a delimiter or line break, and goes on over lines with delimiters in them. */
  private boolean isRest(char[] buffer, int offset, int length) {
    char first = buffer[offset];
    if (first != delimiter && first != '\n' && first != '\r') {
      return false;
    }
    boolean lines = false;
    boolean delimiters = false;
    for (int i = offset; i < offset + length; i++) {
      lines |= buffer[i] == '\n' || buffer[i] == '\r';
      delimiters |= buffer[i] == delimiter;
    }
    return lines && delimiters;
  }

  private static boolean equal(String text, char[] buffer, int offset, int length) {
    if (text == null || text.length() != length) {
      return false;
    }
    for (int i = 0; i < length; i++) {
      if (text.charAt(i) != buffer[offset + i]) {
        return false;
      }
    }
    return true;
  }

  @Override
  protected RecordWrapper<RawRow> buildRecord() {
    if (fields.length != count) {
      fields = Arrays.copyOf(fields, count);
    }
    return wrapRecord(new RawRow(getStartingLineNumber(), fields, null));
  }
}
