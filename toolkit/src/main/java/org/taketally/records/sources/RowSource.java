package org.taketally.records.sources;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A sheet of records before anything is understood of it: headings and rows of text. */
public interface RowSource {

  /** Heading of the file a row set aside stood in first. */
  String FIRST_FILE = "set_aside_file";

  /** As the user named it. */
  String name();

  /** The headings, trimmed. */
  List<String> headings();

  /** The file, if it is one. */
  default Optional<Path> path() {
    return Optional.empty();
  }

  /** The worksheet, if it is one of a workbook. */
  default Optional<String> sheet() {
    return Optional.empty();
  }

  /** Whether it is passed over where it doesn't hold records, as one worksheet of several. */
  default boolean mayBeLeftOut() {
    return false;
  }

  /** Whether it was found in a folder, not named. */
  default boolean ofFolder() {
    return false;
  }

  /**
   * The line that looks like the headings, where the first one doesn't.
   *
   * @return 0 if there is none
   */
  default long likelyHeadingRow() {
    return 0;
  }

  /** What else must be known to read its numbers. */
  default boolean semicolons() {
    return false;
  }

  /** The rows after the headings, from the first; each call starts anew. */
  Rows open();

  /** Rows one by one. */
  interface Rows extends AutoCloseable {

    /** The next row, or null after the last. */
    RawRow next();

    @Override
    void close();
  }
}
