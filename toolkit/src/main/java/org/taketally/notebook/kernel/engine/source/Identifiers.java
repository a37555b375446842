package org.taketally.notebook.kernel.engine.source;

/** Finds the identifier around a place in code. All places are in UTF-16 units. */
public final class Identifiers {

  private Identifiers() {}

  public static int endOf(String code, int cursor) {
    int end = cursor;
    while (end < code.length() && Character.isJavaIdentifierPart(code.codePointAt(end))) {
      end += Character.charCount(code.codePointAt(end));
    }
    return end;
  }

  public static int startOf(String code, int cursor) {
    int start = cursor;
    while (start > 0 && Character.isJavaIdentifierPart(code.codePointBefore(start))) {
      start -= Character.charCount(code.codePointBefore(start));
    }
    return start;
  }
}
