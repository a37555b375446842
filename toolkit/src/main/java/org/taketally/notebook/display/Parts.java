package org.taketally.notebook.display;

import java.lang.reflect.RecordComponent;
import java.util.Locale;

/** The parts of a record, and names of code as words. */
final class Parts {

  private Parts() {}

  static RecordComponent[] of(Class<?> kind) {
    return kind.getRecordComponents();
  }

  static Object value(Record record, RecordComponent part) {
    try {
      return part.getAccessor().invoke(record);
    } catch (ReflectiveOperationException closed) {
      return "\u2026";
    }
  }

  /** {@code standardDeviation} as {@code standard deviation}. */
  static String words(String name) {
    return name.replaceAll("(?<=[a-z0-9])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
  }
}
