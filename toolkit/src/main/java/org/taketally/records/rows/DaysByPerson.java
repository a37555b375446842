package org.taketally.records.rows;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.dictionary.DatesBy;
import org.taketally.records.sources.Trim;

/**
 * Reads the days of a sheet that several people wrote, each in a way of their own. Who isn't named
 * in the dictionary is read like a sheet without a pattern: days that read two ways aren't read.
 */
final class DaysByPerson {

  private final int field;
  private final Map<String, DateNotation> notations = new HashMap<>();
  private final Map<String, DateNotation> known = new HashMap<>();
  private final DateNotation others = new DateNotation(Optional.empty(), Optional.empty());

  DaysByPerson(DatesBy by, Headings headings) {
    int place = headings.all().indexOf(by.column());
    if (place < 0) {
      place =
          headings.meaning().entrySet().stream()
              .filter(one -> one.getValue().equals(by.column()))
              .map(Map.Entry::getKey)
              .findFirst()
              .orElseThrow(
                  () ->
                      headings.unreadable(
                          String.join(", ", headings.all()),
                          "a heading \""
                              + by.column()
                              + "\", which the dictionary names under dates_by",
                          "correct the heading there"));
    }
    field = place;
    by.patterns()
        .forEach(
            (name, pattern) ->
                notations.put(name, new DateNotation(Optional.of(pattern), Optional.empty())));
  }

  FieldValue read(String[] fields, String text) {
    String who = field < fields.length ? Trim.trim(fields[field]) : "";
    DateNotation notation =
        known.computeIfAbsent(
            who, name -> notations.getOrDefault(NameLikeness.plain(name), others));
    return notation.read(text);
  }
}
