package org.taketally.records.dictionary;

import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a dictionary says of one column.
 *
 * @param from its heading in the sheet, if another than our name
 * @param dead the heading of the dead beside it, of takes and outcome
 * @param unit the unit its numbers are in, if another than ours
 * @param dates the pattern of its dates
 * @param decimal the decimal sign of its numbers, {@code .} or {@code ,}
 * @param missing what stands for "not recorded", if other than for the whole sheet
 * @param same spelling in the sheet to the name meant
 * @param levels whether a column of numbers is to be used as names
 */
public record ColumnEntry(
    Optional<String> from,
    Optional<String> dead,
    Optional<String> unit,
    Optional<String> dates,
    Optional<Character> decimal,
    Optional<Set<String>> missing,
    Map<String, String> same,
    boolean levels) {

  static final ColumnEntry NONE =
      new ColumnEntry(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Map.of(),
          false);
}
