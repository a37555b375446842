package org.taketally.answers;

import java.util.List;
import java.util.stream.IntStream;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;
import org.taketally.terms.Provenance;

/** Two stocks in three beds each, 200 grafts a bed. */
public final class SixBeds {

  private SixBeds() {}

  /** Cells with {@code rootstock} (Pellin, Ostrey) and {@code block}, six counts of takes. */
  public static Cells of(int... takesByBed) {
    int[] beds = IntStream.range(0, takesByBed.length).toArray();
    return new Cells(
        List.of(
            new Factor(
                "rootstock",
                List.of("Pellin", "Ostrey"),
                IntStream.of(beds).map(bed -> bed / 3).toArray()),
            new Factor("block", IntStream.of(beds).mapToObj(bed -> "bed " + bed).toList(), beds)),
        List.of(),
        IntStream.of(beds).map(bed -> 200).toArray(),
        takesByBed,
        0,
        Provenance.of("made for a test", 1200));
  }
}
