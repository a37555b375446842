package org.taketally.notebook.kernel;

/** The protocol counts places in code points, Java in UTF-16 units. */
final class CodePoints {

  private CodePoints() {}

  static int toUnits(String code, int codePoints) {
    int within = Math.max(0, Math.min(codePoints, code.codePointCount(0, code.length())));
    return code.offsetByCodePoints(0, within);
  }

  static int fromUnits(String code, int units) {
    return code.codePointCount(0, units);
  }
}
