package org.taketally.records.problems;

import java.util.ArrayList;
import java.util.List;

/** Packs places into whole numbers, so that ten million of them fit into memory. */
public final class Places {

  private final List<String> files = new ArrayList<>();
  private final List<Long> starts = new ArrayList<>();
  private long last;

  /** Starts a file; the places that follow are in it. */
  public void begin(String file) {
    files.add(file);
    starts.add(last);
  }

  /** The number of a line of the file begun last. */
  public int pack(long line) {
    long start = starts.get(starts.size() - 1);
    last = Math.max(last, start + line);
    return Math.toIntExact(start + line);
  }

  public Place unpack(int packed) {
    int file = files.size() - 1;
    while (file > 0 && starts.get(file) >= packed) {
      file--;
    }
    return new Place(files.get(file), packed - starts.get(file));
  }
}
