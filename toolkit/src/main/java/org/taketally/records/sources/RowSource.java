package org.taketally.records.sources;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A sheet of records before anything is understood of it: headings and rows of text. */
public interface RowSource {

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
