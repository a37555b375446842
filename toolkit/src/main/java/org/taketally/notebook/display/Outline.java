package org.taketally.notebook.display;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.taketally.answers.Estimate;
import org.taketally.answers.counts.TakeCount;
import org.taketally.terms.Interval;

/**
 * The toolkit's records that have no display of their own: one as a table of its parts, several
 * alike as a table with a line each.
 */
final class Outline {

  private static final int ROWS = 60;

  private Outline() {}

  /** Parts of one of the toolkit's records; null for anybody else's, whose own text is shown. */
  static Shown record(Record record) {
    if (!isOurs(record)) {
      return null;
    }
    if (record instanceof Interval || record instanceof Estimate || record instanceof TakeCount) {
      return Shown.paragraph(Brief.of(record));
    }
    List<List<String>> rows = new ArrayList<>();
    for (RecordComponent part : Parts.of(record.getClass())) {
      rows.add(List.of(Parts.words(part.getName()), Brief.of(Parts.value(record, part))));
    }
    return Shown.of(
        Grid.of(Parts.words(record.getClass().getSimpleName()), List.of("part", "value"), rows));
  }

  /** A line for each record; null if these aren't records of the toolkit. */
  static Shown records(Collection<?> items) {
    if (items.isEmpty() || !items.stream().allMatch(Outline::isOurs)) {
      return null;
    }
    Class<?> kind = items.iterator().next().getClass();
    boolean alike = items.stream().allMatch(kind::isInstance);
    List<List<String>> rows = new ArrayList<>();
    items.stream().limit(ROWS).forEach(each -> rows.add(row((Record) each, alike)));
    if (items.size() > ROWS) {
      rows.add(null);
    }
    String caption =
        "%s%,d %s"
            .formatted(
                alike ? Parts.words(kind.getSimpleName()) + ": " : "",
                items.size(),
                items.size() == 1 ? "row" : "rows");
    List<String> headings =
        alike
            ? Arrays.stream(Parts.of(kind)).map(part -> Parts.words(part.getName())).toList()
            : List.of("what", "parts");
    return Shown.of(Grid.of(caption, headings, rows));
  }

  private static List<String> row(Record record, boolean alike) {
    if (!alike) {
      return List.of(Parts.words(record.getClass().getSimpleName()), Brief.of(record));
    }
    return Arrays.stream(Parts.of(record.getClass()))
        .map(part -> Brief.of(Parts.value(record, part)))
        .toList();
  }

  /** A line for each key; null if the values aren't records of the toolkit. */
  static Shown map(Map<?, ?> map) {
    if (map.isEmpty() || !map.values().stream().allMatch(Outline::holdsOurs)) {
      return null;
    }
    List<List<String>> rows = new ArrayList<>();
    map.forEach((key, value) -> rows.add(List.of(Brief.of(key), Brief.of(value))));
    return Shown.of(Grid.of("", List.of("of", "value"), rows));
  }

  private static boolean holdsOurs(Object value) {
    return isOurs(value)
        || (value instanceof Collection<?> items
            && !items.isEmpty()
            && items.stream().allMatch(Outline::isOurs));
  }

  private static boolean isOurs(Object value) {
    return value instanceof Record && value.getClass().getName().startsWith("org.taketally.");
  }
}
