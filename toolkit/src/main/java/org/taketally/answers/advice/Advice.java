package org.taketally.answers.advice;

import java.util.List;
import org.taketally.answers.Estimate;

/** One thing to do differently next season, because takes were surely better so. */
public sealed interface Advice {

  /**
   * What it is about.
   *
   * @return column of the records
   */
  String factor();

  /**
   * What following it brings, all else equal.
   *
   * @return difference in take, above 0, at most 1 (0.04 is 4 points)
   */
  Estimate gain();

  /**
   * How sure the direction is, after allowing for every question that was looked at.
   *
   * @return at least {@link SeasonAdviceCalculator#SURE}, at most 1
   */
  double sure();

  /**
   * Grafts that were compared.
   *
   * @return at least 2
   */
  long grafts();

  /**
   * Use some levels of a factor rather than others.
   *
   * @param factor column of the records
   * @param rather levels each of which surely took better than every one of {@code than}
   * @param than levels that took worse
   * @param gain the smallest of those differences
   * @param sure sureness of the least sure of those differences
   * @param grafts grafts of all these levels
   */
  record PreferLevels(
      String factor,
      List<String> rather,
      List<String> than,
      Estimate gain,
      double sure,
      long grafts)
      implements Advice {

    public PreferLevels {
      rather = List.copyOf(rather);
      than = List.copyOf(than);
      if (rather.isEmpty() || than.isEmpty()) {
        throw new IllegalArgumentException("advice on %s needs levels to part".formatted(factor));
      }
    }
  }

  /**
   * Use wood within so many days: until then take has hardly fallen.
   *
   * @param factor column of the records, e.g. {@code storage_days}
   * @param unit its unit in words
   * @param within last value up to which take stays near its best
   * @param beyond value by which it has surely fallen
   * @param takeWithin take at {@code within}, 0 to 1
   * @param takeBeyond take at {@code beyond}, 0 to 1
   * @param gain take at {@code within} minus take at {@code beyond}
   * @param sure sureness that take falls between the two
   * @param grafts grafts behind the curve
   */
  record UseWithin(
      String factor,
      String unit,
      double within,
      double beyond,
      Estimate takeWithin,
      Estimate takeBeyond,
      Estimate gain,
      double sure,
      long grafts)
      implements Advice {}

  /**
   * Compare how people work: hands surely differ, whose is not said.
   *
   * @param factor column of the records that says who grafted
   * @param hands how many were compared
   * @param gain how far apart two hands typically are
   * @param sure sureness that some two differ
   * @param grafts grafts behind it
   */
  record CompareHands(String factor, int hands, Estimate gain, double sure, long grafts)
      implements Advice {}
}
