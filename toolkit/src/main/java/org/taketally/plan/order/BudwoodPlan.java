package org.taketally.plan.order;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.taketally.plan.order.BudwoodRequest.BudStage;

/**
 * What to cut for requests of budwood, and when. Requests of one cultivar share the sticks on its
 * trees, those needed first before others.
 *
 * @param lines one a request, in their order
 * @param storage how long wood keeps
 * @param today the day the plan is made
 */
public record BudwoodPlan(List<Line> lines, StorageLimits storage, LocalDate today) {

  public BudwoodPlan {
    lines = List.copyOf(lines);
  }

  /** Whether the buds are as wanted. */
  public enum Buds {
    /** As wanted, or any will do. */
    READY,
    /** Not that far yet. */
    NOT_YET,
    /** Too far already. */
    PAST,
    /** Nobody said what they are like. */
    NOT_SAID
  }

  /**
   * What to do for a request.
   *
   * @param request what is asked for
   * @param cut sticks to cut, those that spoil included
   * @param missing of them, beyond what requests needed earlier leave on the trees; 0 where what is
   *     there isn't said
   * @param buds whether they are as wanted today
   * @param cutOn the day to cut, as late as leaves a day to send it: the day before grafting, or
   *     today if that is later
   * @param notBefore earliest day of cutting that still keeps until the day of grafting; empty if
   *     it isn't known how long wood keeps
   * @param useBy last day to graft wood cut on {@code cutOn}; empty likewise
   * @param late whether the day of grafting has passed
   */
  public record Line(
      BudwoodRequest request,
      int cut,
      int missing,
      Buds buds,
      LocalDate cutOn,
      Optional<LocalDate> notBefore,
      Optional<LocalDate> useBy,
      boolean late) {

    /**
     * Whether it can be met as things are.
     *
     * @return true if there are sticks enough, nothing is known against their buds, and it isn't
     *     too late
     */
    public boolean canBeMet() {
      return missing == 0 && (buds == Buds.READY || buds == Buds.NOT_SAID) && !late;
    }

    /**
     * Whether it can be met if the buds get as far as wanted by the day of cutting.
     *
     * @param today the day the plan is made
     * @return false if it can be met without, or not at all
     */
    public boolean waitsForBuds(LocalDate today) {
      return missing == 0 && buds == Buds.NOT_YET && cutOn.isAfter(today) && !late;
    }

    /** Sticks on the trees that are kept for it. */
    private int takes(LocalDate today) {
      boolean lost = late || buds == Buds.PAST || (buds == Buds.NOT_YET && !cutOn.isAfter(today));
      return lost ? 0 : cut - missing;
    }
  }

  /**
   * Plans.
   *
   * @param requests at least one
   * @param wood buds, sticks and what spoils
   * @param storage how long wood keeps
   * @param today the day the plan is made
   * @return what to cut and when
   * @throws IllegalArgumentException without a request
   */
  public static BudwoodPlan of(
      List<BudwoodRequest> requests, WoodUse wood, StorageLimits storage, LocalDate today) {
    if (requests.isEmpty()) {
      throw new IllegalArgumentException(
          "a plan of budwood needs at least one request: cultivar, sticks, needed");
    }
    SharedSticks left = new SharedSticks();
    requests.forEach(
        request -> request.onTree().ifPresent(sticks -> left.there(request.cultivar(), sticks)));
    BudwoodPlan empty = new BudwoodPlan(List.of(), storage, today);
    Line[] lines = new Line[requests.size()];
    IntStream.range(0, lines.length)
        .boxed()
        .sorted(Comparator.comparing((Integer i) -> requests.get(i).needed()))
        .forEach(
            i -> {
              BudwoodRequest request = requests.get(i);
              lines[i] = empty.line(request, cut(request, wood), left.left(request.cultivar()));
              left.use(request.cultivar(), lines[i].takes(today));
            });
    return new BudwoodPlan(List.of(lines), storage, today);
  }

  private static int cut(BudwoodRequest request, WoodUse wood) {
    return (int) Math.ceil(request.sticks() / (1 - wood.spoiled()) - 1e-9);
  }

  private Line line(BudwoodRequest request, int cut, OptionalInt there) {
    LocalDate dayBefore = request.needed().minusDays(1);
    LocalDate cutOn = dayBefore.isBefore(today) ? today : dayBefore;
    Optional<Integer> keeps = storage.keeps().stream().boxed().findFirst();
    return new Line(
        request,
        cut,
        Math.max(0, cut - there.orElse(cut)),
        buds(request),
        cutOn,
        keeps.map(days -> request.needed().minusDays(days)),
        keeps.map(cutOn::plusDays),
        request.needed().isBefore(today));
  }

  private static Buds buds(BudwoodRequest request) {
    Optional<BudStage> wanted = request.wanted();
    Optional<BudStage> now = request.buds();
    if (wanted.isEmpty()) {
      return Buds.READY;
    }
    if (now.isEmpty()) {
      return Buds.NOT_SAID;
    }
    int ahead = now.get().compareTo(wanted.get());
    return ahead == 0 ? Buds.READY : ahead < 0 ? Buds.NOT_YET : Buds.PAST;
  }

  /**
   * Sticks to cut for requests that can be met.
   *
   * @return sum
   */
  public long sticks() {
    return lines.stream().filter(Line::canBeMet).mapToLong(Line::cut).sum();
  }
}
