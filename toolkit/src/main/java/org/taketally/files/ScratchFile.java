package org.taketally.files;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** A file of our own in the system's folder for such, gone when Java ends. */
public final class ScratchFile {

  private ScratchFile() {}

  /**
   * Makes one.
   *
   * @param name how its name begins
   * @param ending how its name ends, e.g. {@code .xlsx}
   * @param content what it holds
   * @return where it is
   * @throws IOException if it can't be written
   */
  public static Path of(String name, String ending, Content content) throws IOException {
    Path file = Files.createTempFile(name, ending);
    file.toFile().deleteOnExit();
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
      content.writeTo(out);
    }
    return file;
  }
}
