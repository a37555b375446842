package org.taketally.records.problems;

/**
 * A place in what was read.
 *
 * @param file the file as the user named it
 * @param line 1-based line, or 0 for the whole file
 */
public record Place(String file, long line) {

  public static Place whole(String file) {
    return new Place(file, 0);
  }

  @Override
  public String toString() {
    return line > 0 ? file + " line " + line : file;
  }
}
