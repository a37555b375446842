package org.taketally.plan.order;

import java.util.Comparator;
import java.util.OptionalInt;
import org.taketally.answers.effects.TakeCurve;
import org.taketally.terms.CropProfile;

/**
 * How long budwood keeps.
 *
 * @param best days up to which it is at its best, by the crop profile; empty if not said
 * @param limit days beyond which it is a reason to look, by the crop profile; empty if not said
 * @param falling days from which the take fitted to past records has fallen by the margin; empty if
 *     it doesn't, or there is no curve
 * @param seenUpTo days up to which past records hold enough grafts to say; empty without a curve
 */
public record StorageLimits(
    OptionalInt best, OptionalInt limit, OptionalInt falling, OptionalInt seenUpTo) {

  /** Nothing is known. */
  public static final StorageLimits UNKNOWN =
      new StorageLimits(
          OptionalInt.empty(), OptionalInt.empty(), OptionalInt.empty(), OptionalInt.empty());

  /**
   * Of a crop.
   *
   * @param crop profile
   * @return its limits
   */
  public static StorageLimits of(CropProfile crop) {
    return new StorageLimits(
        days(crop, CropProfile.Item.STORAGE_DAYS_BEST),
        days(crop, CropProfile.Item.STORAGE_DAYS_LIMIT),
        OptionalInt.empty(),
        OptionalInt.empty());
  }

  private static OptionalInt days(CropProfile crop, CropProfile.Item item) {
    return crop.number(item).isPresent()
        ? OptionalInt.of((int) Math.floor(crop.number(item).getAsDouble()))
        : OptionalInt.empty();
  }

  /**
   * With what past records say.
   *
   * @param curve take against days of storage
   * @param margin fall that would change what you do, above 0 and below 1
   * @return the limits
   */
  public StorageLimits with(TakeCurve curve, double margin) {
    var known = curve.points().stream().filter(point -> !point.thin()).toList();
    if (known.isEmpty()) {
      return this;
    }
    TakeCurve.Point top =
        known.stream().max(Comparator.comparingDouble(p -> p.take().value())).orElseThrow();
    OptionalInt fallen =
        known.stream()
            .filter(p -> p.value() > top.value())
            .filter(p -> p.take().value() <= top.take().value() - margin)
            .mapToInt(p -> (int) Math.floor(p.value()))
            .findFirst();
    return new StorageLimits(
        best, limit, fallen, OptionalInt.of((int) Math.floor(known.get(known.size() - 1).value())));
  }

  /**
   * Days it may be kept.
   *
   * @return the least of the crop's limit and the days after which take has fallen; empty if
   *     neither is known
   */
  public OptionalInt keeps() {
    if (falling.isPresent() && limit.isPresent()) {
      return OptionalInt.of(Math.min(falling.getAsInt(), limit.getAsInt()));
    }
    return falling.isPresent() ? falling : limit;
  }
}
