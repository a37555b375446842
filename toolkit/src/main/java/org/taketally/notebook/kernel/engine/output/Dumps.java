package org.taketally.notebook.kernel.engine.output;

import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.taketally.notebook.kernel.engine.source.SnippetNames;

/**
 * Values whose own text helps nobody: an address in memory, or everything a record holds. They are
 * shown in outline: what they are, and what they can be asked.
 */
final class Dumps {

  private static final int LONG_RECORD = 1_000;
  private static final int LONG_PART = 100;

  private Dumps() {}

  /** Whether a value, as shown, is nothing but such a text. */
  static boolean isOne(Object value, Bundle shown) {
    if (shown.data().size() != 1 || SnippetNames.isSnippetClass(value.getClass().getName())) {
      return false;
    }
    return value.getClass().isRecord()
        ? shown.plainText().length() > LONG_RECORD
        : hasNoText(value.getClass()) && isNamed(value.getClass());
  }

  private static boolean hasNoText(Class<?> type) {
    try {
      return type.getMethod("toString").getDeclaringClass() == Object.class;
    } catch (NoSuchMethodException never) {
      return false;
    }
  }

  private static boolean isNamed(Class<?> type) {
    return Modifier.isPublic(type.getModifiers()) && !type.getName().startsWith("java.");
  }

  static String outlined(Object value) {
    return value.getClass().isRecord() ? parts((Record) value) : questions(value.getClass());
  }

  private static String parts(Record record) {
    StringBuilder text = new StringBuilder(record.getClass().getSimpleName());
    for (RecordComponent part : record.getClass().getRecordComponents()) {
      text.append("\n  ").append(part.getName()).append(": ").append(part(record, part));
    }
    return text.toString();
  }

  private static String part(Record record, RecordComponent part) {
    try {
      String text = String.valueOf(part.getAccessor().invoke(record)).replace('\n', ' ');
      return text.length() > LONG_PART ? text.substring(0, LONG_PART) + "..." : text;
    } catch (ReflectiveOperationException | RuntimeException closed) {
      return "...";
    }
  }

  private static String questions(Class<?> type) {
    String names =
        Arrays.stream(type.getMethods())
            .filter(Dumps::isQuestion)
            .map(method -> method.getName() + "()")
            .distinct()
            .sorted()
            .collect(Collectors.joining(", "));
    return type.getSimpleName() + (names.isEmpty() ? "" : "\n  can be asked: " + names);
  }

  private static boolean isQuestion(Method method) {
    return method.getParameterCount() == 0
        && method.getReturnType() != void.class
        && method.getDeclaringClass() != Object.class
        && !Modifier.isStatic(method.getModifiers())
        && !method.getName().equals("hashCode");
  }
}
