package org.taketally.records.rows;

import it.unimi.dsi.fastutil.objects.Object2IntOpenHashMap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.taketally.records.problems.Place;

/** The names met in a column, numbered in the order met, with how often and where first. */
public final class Levels {

  private final Object2IntOpenHashMap<String> codes = new Object2IntOpenHashMap<>();
  private final List<String> names = new ArrayList<>();
  private long[] rows = new long[16];
  private Place[] first = new Place[16];

  Levels() {
    codes.defaultReturnValue(-1);
  }

  /** The number of a name, given to it if it is new. */
  public int code(String name) {
    int code = codes.getInt(name);
    if (code < 0) {
      code = names.size();
      codes.put(name, code);
      names.add(name);
      if (code == rows.length) {
        rows = Arrays.copyOf(rows, 2 * code);
        first = Arrays.copyOf(first, 2 * code);
      }
    }
    return code;
  }

  /** Counts a kept row that has this level. */
  public void seen(int code, Place place) {
    if (rows[code]++ == 0) {
      first[code] = place;
    }
  }

  public int size() {
    return names.size();
  }

  public String name(int code) {
    return names.get(code);
  }

  List<String> names() {
    return names;
  }

  /** Kept rows with this level. */
  public long rows(int code) {
    return rows[code];
  }

  /** Where the level was first met in a kept row. */
  public Place first(int code) {
    return first[code];
  }
}
