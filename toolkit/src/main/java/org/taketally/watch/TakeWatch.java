package org.taketally.watch;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Whether the running season is going wrong: counted lots against what was to be expected of them.
 *
 * @param steps the chart after each lot, in the order of counting
 * @param recent how many more fail lately than expected, after each of the same lots
 * @param limit height that alarms
 * @param alarms what was alarmed, oldest first
 * @param grafts grafts counted
 * @param failures of them
 * @param expectedFailures of them
 */
public record TakeWatch(
    List<SeasonChart.Step> steps,
    List<RecentExcess> recent,
    double limit,
    List<Alarm> alarms,
    long grafts,
    long failures,
    double expectedFailures) {

  public TakeWatch {
    steps = List.copyOf(steps);
    recent = List.copyOf(recent);
    alarms = List.copyOf(alarms);
  }

  /**
   * An alarm.
   *
   * @param day of the count that raised it
   * @param since first count of the run of failures
   * @param causes what the failures counted up to then have in common, most telling first; may be
   *     empty: failures all over
   */
  public record Alarm(LocalDate day, LocalDate since, List<Cause> causes) {

    public Alarm {
      causes = List.copyOf(causes);
    }
  }

  /**
   * A counted lot with what was to be expected of it.
   *
   * @param lot as counted
   * @param expected before it was
   */
  public record CountedLot(WatchedLot lot, LotExpectation expected) {}

  /**
   * Watches a season.
   *
   * @param counted lots counted so far, in any order; late starters enter on the day they are
   *     counted and are no failures before
   * @param chart with the limit for the whole season
   * @return the chart and its alarms
   */
  public static TakeWatch of(List<CountedLot> counted, SeasonChart chart) {
    return of(counted, chart, counted);
  }

  /**
   * Watches a season whose steps are made up of smaller lots.
   *
   * @param counted steps of the chart, in any order
   * @param chart with the limit for the whole season
   * @param parts the lots causes are looked for in
   * @return the chart and its alarms
   */
  public static TakeWatch of(List<CountedLot> counted, SeasonChart chart, List<CountedLot> parts) {
    List<CountedLot> inOrder =
        counted.stream()
            .sorted(
                Comparator.comparing((CountedLot c) -> c.lot().counted())
                    .thenComparing(c -> c.lot().label()))
            .toList();
    List<WatchedLot> lots = inOrder.stream().map(CountedLot::lot).toList();
    List<LotExpectation> expected = inOrder.stream().map(CountedLot::expected).toList();
    List<SeasonChart.Step> steps = chart.run(lots, expected);
    List<Alarm> alarms =
        IntStream.range(0, steps.size())
            .filter(i -> steps.get(i).alarm())
            .mapToObj(i -> alarm(i, steps, parts))
            .toList();
    return new TakeWatch(
        steps,
        RecentExcess.of(lots, expected, chart.runLength()),
        chart.limit(),
        alarms,
        lots.stream().mapToLong(WatchedLot::grafts).sum(),
        lots.stream().mapToLong(WatchedLot::failures).sum(),
        inOrder.stream().mapToDouble(c -> c.lot().grafts() * (1 - c.expected().mean())).sum());
  }

  private static Alarm alarm(int i, List<SeasonChart.Step> steps, List<CountedLot> parts) {
    int start = i;
    while (start > 0 && !steps.get(start - 1).alarm() && steps.get(start - 1).height() > 0) {
      start--;
    }
    LocalDate day = steps.get(i).lot().counted();
    List<CountedLot> soFar =
        parts.stream().filter(part -> !part.lot().counted().isAfter(day)).toList();
    List<Cause> causes =
        new CauseFinder(
                soFar.stream().map(CountedLot::lot).toList(),
                soFar.stream().map(CountedLot::expected).toList())
            .causes();
    return new Alarm(day, steps.get(start).lot().counted(), causes);
  }

  /**
   * The latest alarm.
   *
   * @return empty if all is as expected
   */
  public Optional<Alarm> latest() {
    return alarms.isEmpty() ? Optional.empty() : Optional.of(alarms.get(alarms.size() - 1));
  }
}
