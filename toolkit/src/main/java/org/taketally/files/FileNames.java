package org.taketally.files;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** Names that every file system takes, and that stay in their folder. */
public final class FileNames {

  private static final int LONGEST = 120;
  private static final Pattern RESERVED =
      Pattern.compile("(?i)(con|prn|aux|nul|com[0-9]|lpt[0-9])(\\..*)?");

  private FileNames() {}

  /**
   * The name of a file without its folders.
   *
   * @param path as typed on any system
   * @return what stands behind the last slash of either kind
   */
  public static String withoutFolder(String path) {
    return path.substring(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
  }

  /** The name with what a file system could trip over replaced by {@code _}. */
  static String safe(String name) {
    String safe = name.strip().replaceAll("[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}\\\\/:*?\"<>|]", "_");
    safe = safe.replaceFirst("^[.\\s]+", "_").replaceFirst("[.\\s]+$", "_");
    if (safe.length() > LONGEST) {
      int dot = safe.lastIndexOf('.');
      String ending = dot > 0 && safe.length() - dot <= 10 ? safe.substring(dot) : "";
      safe = safe.substring(0, LONGEST - ending.length()) + ending;
    }
    return safe.isEmpty() || RESERVED.matcher(safe).matches() ? "_" + safe : safe;
  }

  /** A safe name that differs from all given by more than upper and lower case. */
  static String distinct(String name, Set<String> taken) {
    String safe = safe(name);
    int dot = safe.lastIndexOf('.');
    String stem = dot > 0 ? safe.substring(0, dot) : safe;
    String ending = dot > 0 ? safe.substring(dot) : "";
    String candidate = safe;
    for (int i = 2; isTaken(candidate, taken); i++) {
      candidate = stem + "-" + i + ending;
    }
    return candidate;
  }

  private static boolean isTaken(String name, Set<String> taken) {
    String low = name.toLowerCase(Locale.ROOT);
    return taken.stream().anyMatch(other -> other.toLowerCase(Locale.ROOT).equals(low));
  }
}
