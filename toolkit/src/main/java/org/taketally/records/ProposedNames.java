package org.taketally.records;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.records.columns.ColumnKind;
import org.taketally.records.columns.DittoMarks;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.problems.DictionaryEntry;
import org.taketally.records.sources.Trim;

/** Asks of names that may be one: spelt two ways, nearly alike, or cut short with a dot. */
final class ProposedNames {

  /** Names of one column that are compared with each other; a sheet with more is left to check. */
  private static final int COMPARED = 300;

  private final ProposedSheet sheet;

  ProposedNames(ProposedSheet sheet) {
    this.sheet = sheet;
  }

  void ask(RecordColumn column, String heading) {
    if (column.kind() != ColumnKind.LEVELS || column.closed()) {
      return;
    }
    Map<String, Integer> counts = new LinkedHashMap<>();
    sheet
        .values(heading)
        .counts()
        .forEach((name, count) -> counts.merge(Trim.singleSpaced(name), count, Integer::sum));
    List<String> names = new ArrayList<>(counts.keySet());
    names.removeIf(DittoMarks::isDitto);
    if (names.size() > COMPARED) {
      return;
    }
    Map<String, String> asked = new HashMap<>();
    for (List<String> pair : pairs(names, counts)) {
      String before = asked.get(pair.get(0));
      boolean settled = before != null && before.equals(asked.get(pair.get(1)));
      if (!settled) { // two spellings of a third name aren't asked about a third time
        pair(column, heading, pair, counts);
        asked.putIfAbsent(pair.get(1), pair.get(0));
      }
    }
  }

  /** Names that may be one, those of the commonest name first. */
  private static List<List<String>> pairs(List<String> names, Map<String, Integer> counts) {
    List<List<String>> pairs = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (NameLikeness.mayBeOne(names.get(i), names.get(j))) {
          pairs.add(longer(counts, names.get(j), names.get(i)));
        }
      }
    }
    pairs.sort(Comparator.comparingInt(pair -> -counts.get(pair.get(0))));
    return pairs;
  }

  /** The full name first, or else the commoner. */
  private static List<String> longer(Map<String, Integer> counts, String one, String other) {
    boolean turn =
        NameLikeness.shortFor(one, other)
            || (!NameLikeness.shortFor(other, one) && counts.get(other) > counts.get(one));
    return turn ? List.of(other, one) : List.of(one, other);
  }

  private void pair(
      RecordColumn column, String heading, List<String> pair, Map<String, Integer> counts) {
    String name = pair.get(0);
    String spelling = pair.get(1);
    sheet
        .ask(
            "\"%s\" (%s under \"%s\") may be \"%s\" (%s); add %s to %s if it is",
            spelling,
            OpenQuestion.times(counts.get(spelling)),
            heading,
            name,
            OpenQuestion.times(counts.get(name)),
            DictionaryEntry.same(name, spelling),
            column.columnName())
        .choice(
            "another spelling of " + name,
            OpenQuestion.list(List.of(spelling)),
            "columns",
            column.columnName(),
            "same",
            name)
        .choice("a name of its own", new JsonObject());
  }
}
