package org.taketally.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * One file written whole or not at all: beside its place first, down to the disk, then renamed. It
 * replaces what is there; whether it may is for the caller to know. Where a person names the place,
 * use {@link FileSet}.
 */
public final class SafeFile {

  private SafeFile() {}

  /**
   * Writes text as UTF-8.
   *
   * @param file where to; its folder must exist, and a link is followed
   * @param text what it is to hold
   * @throws IOException if it can't be written; then it is as it was
   */
  public static void write(Path file, String text) throws IOException {
    write(file, Content.text(text));
  }

  /**
   * Writes a file.
   *
   * @param file where to; its folder must exist, and a link is followed
   * @param content what it is to hold
   * @throws IOException if it can't be written; then it is as it was
   */
  public static void write(Path file, Content content) throws IOException {
    try (NewFile written = NewFile.of(file)) {
      content.writeTo(written.out());
      written.keep();
    }
  }

  /**
   * Whether two names lead to one file, links included.
   *
   * @param one a file
   * @param other another, or the same
   * @return false if one of them isn't there, unless they are spelled alike
   * @throws java.io.UncheckedIOException if the disk can't tell
   */
  public static boolean isSame(Path one, Path other) {
    try {
      return one.toAbsolutePath().normalize().equals(other.toAbsolutePath().normalize())
          || (Files.exists(one) && Files.exists(other) && Files.isSameFile(one, other));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
