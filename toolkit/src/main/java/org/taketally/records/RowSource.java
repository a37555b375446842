package org.taketally.records;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A sheet of records before anything is understood of it: headings and rows of text. */
interface RowSource {

  /** As the user named it. */
  String name();

  /** The headings, trimmed. */
  List<String> headings();

  /** The file, if it is one. */
  default Optional<Path> path() {
    return Optional.empty();
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
