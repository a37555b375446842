package org.taketally.publish.privacy;

import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Published tables by the numbers of their cells. */
final class Tables {

  private Tables() {}

  static BitSet cells(int... numbers) {
    BitSet cells = new BitSet();
    IntStream.of(numbers).forEach(cells::set);
    return cells;
  }

  /** Every cell from one up to another, without that. */
  static BitSet range(int from, int to) {
    BitSet cells = new BitSet();
    cells.set(from, to);
    return cells;
  }

  /** One line. */
  static PublishedTable of(String name, int... numbers) {
    return of(name, cells(numbers));
  }

  static PublishedTable of(String name, BitSet... lines) {
    return new PublishedTable(
        name,
        Stream.of(lines)
            .map(line -> new PublishedTable.Entry(List.of(line.toString()), line, false))
            .toList());
  }
}
