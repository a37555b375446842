package org.taketally.notebook.kernel.engine;

/** Finds the identifier around a place in code. All places are in UTF-16 units. */
final class Identifiers {

  private Identifiers() {}

  static int endOf(String code, int cursor) {
    int end = cursor;
    while (end < code.length() && Character.isJavaIdentifierPart(code.codePointAt(end))) {
      end += Character.charCount(code.codePointAt(end));
    }
    return end;
  }

  static int startOf(String code, int cursor) {
    int start = cursor;
    while (start > 0 && Character.isJavaIdentifierPart(code.codePointBefore(start))) {
      start -= Character.charCount(code.codePointBefore(start));
    }
    return start;
  }
}
