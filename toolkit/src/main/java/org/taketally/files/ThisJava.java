package org.taketally.files;

import java.nio.file.Path;

/** The Java this program runs in, for programs it starts. */
public final class ThisJava {

  private ThisJava() {}

  /**
   * Its program.
   *
   * @return {@code bin/java} of its home
   */
  public static Path program() {
    return Path.of(System.getProperty("java.home"), "bin", "java");
  }
}
