package org.taketally.records.columns;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * How large what is read may be: far beyond what any circle or nursery keeps, and small enough that
 * a damaged or hostile file is refused in a sentence before it takes the memory or the day. Stated
 * in docs/reliability.md.
 */
public final class SizeLimits {

  /** Columns of a sheet. */
  public static final int COLUMNS = 2_000;

  /** Signs in one cell. */
  public static final int CELL = 1_000_000;

  /** Grafts in one row. */
  public static final int GRAFTS_IN_ROW = 1_000_000;

  /** Bytes of a dictionary or crop profile. */
  private static final long SMALL_FILE = 10_000_000;

  /** Bytes of one part of a workbook, unpacked. */
  public static final long WORKBOOK_PART = 4_000_000_000L;

  /** Parts of a workbook. */
  public static final int WORKBOOK_PARTS = 10_000;

  /** Signs of a number in JSON. */
  public static final int NUMBER = 40;

  private SizeLimits() {}

  /**
   * Whether a file may be held in memory whole: a pipe or a device never tells where it ends.
   *
   * @param path a file that exists
   */
  public static boolean isSmallFile(Path path) throws IOException {
    return Files.size(path) <= SMALL_FILE && Files.isRegularFile(path);
  }
}
