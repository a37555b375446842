package org.taketally.files;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** What a file is to hold. */
@FunctionalInterface
public interface Content {

  /**
   * Writes all of it.
   *
   * @param out where to; not to be closed
   * @throws IOException if it can't be written
   */
  void writeTo(OutputStream out) throws IOException;

  /**
   * Text as UTF-8.
   *
   * @param text what the file is to hold
   * @return the content
   */
  static Content text(String text) {
    return out -> out.write(text.getBytes(StandardCharsets.UTF_8));
  }
}
