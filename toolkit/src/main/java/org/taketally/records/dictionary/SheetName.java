package org.taketally.records.dictionary;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;

/** Names of worksheets in messages and in dictionaries: {@code club.xlsx, sheet 2024}. */
public final class SheetName {

  private static final String BETWEEN = ", sheet ";

  private SheetName() {}

  public static String of(Path workbook, String sheet) {
    return workbook + BETWEEN + sheet;
  }

  /**
   * What a pattern of the dictionary may fit: the file's name, and for a worksheet that with the
   * name of the worksheet.
   *
   * @return empty for a query
   */
  public static List<String> plain(String source) {
    int end = source.lastIndexOf(BETWEEN);
    String file = end < 0 ? source : source.substring(0, end);
    try {
      Path name = Path.of(file).getFileName();
      if (name == null) {
        return List.of();
      }
      return end < 0
          ? List.of(name.toString())
          : List.of(name.toString(), name + source.substring(end));
    } catch (InvalidPathException e) {
      return List.of();
    }
  }
}
