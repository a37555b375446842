package org.taketally.plan.order;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.taketally.plan.order.BudwoodRequest.BudStage;

/**
 * What to cut for requests of budwood, and when.
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
   * @param missing of them, beyond what is on the trees; 0 where that isn't said
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
     * @return true if there are sticks enough, their buds aren't past, and it isn't too late
     */
    public boolean canBeMet() {
      return missing == 0 && buds != Buds.PAST && !late;
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
    return new BudwoodPlan(
        requests.stream().map(request -> line(request, wood, storage, today)).toList(),
        storage,
        today);
  }

  private static Line line(
      BudwoodRequest request, WoodUse wood, StorageLimits storage, LocalDate today) {
    int cut = (int) Math.ceil(request.sticks() / (1 - wood.spoiled()) - 1e-9);
    LocalDate dayBefore = request.needed().minusDays(1);
    LocalDate cutOn = dayBefore.isBefore(today) ? today : dayBefore;
    Optional<LocalDate> notBefore =
        storage.keeps().isPresent()
            ? Optional.of(request.needed().minusDays(storage.keeps().getAsInt()))
            : Optional.empty();
    return new Line(
        request,
        cut,
        request.onTree().isPresent() ? Math.max(0, cut - request.onTree().getAsInt()) : 0,
        buds(request),
        cutOn,
        notBefore,
        storage.keeps().isPresent()
            ? Optional.of(cutOn.plusDays(storage.keeps().getAsInt()))
            : Optional.empty(),
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
