package org.taketally.records.dictionary;

/** Patterns of file names: {@code *} stands for any signs, {@code ?} for one. */
final class Wildcards {

  private Wildcards() {}

  /**
   * Whether a name fits. Each sign is looked at few times, whatever the pattern: only the last star
   * is ever tried again.
   */
  static boolean match(String pattern, String name) {
    int p = 0;
    int n = 0;
    int star = -1;
    int tried = 0;
    while (n < name.length()) {
      if (p < pattern.length() && pattern.charAt(p) == '*') {
        star = p++;
        tried = n;
      } else if (p < pattern.length()
          && (pattern.charAt(p) == '?' || pattern.charAt(p) == name.charAt(n))) {
        p++;
        n++;
      } else if (star >= 0) {
        p = star + 1;
        n = ++tried;
      } else {
        return false;
      }
    }
    while (p < pattern.length() && pattern.charAt(p) == '*') {
      p++;
    }
    return p == pattern.length();
  }
}
