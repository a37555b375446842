package org.taketally.publish;

import java.util.List;
import java.util.Optional;
import org.taketally.answers.StorageCurve;
import org.taketally.answers.StorageCurve.Point;
import org.taketally.answers.Words;

/** What a storage curve says to members. */
final class StorageWords {

  private StorageWords() {}

  static String headline(StorageCurve curve) {
    Point first = curve.points().get(0);
    Point last = curve.points().get(curve.points().size() - 1);
    return "%s at %s, %s at %s."
        .formatted(
            Words.sentence(PlainWords.take(first.take())),
            Words.amount(first.value(), curve.unit()),
            PlainWords.take(last.take()),
            Words.amount(last.value(), curve.unit()));
  }

  /**
   * The first point, with enough grafts near, at which take has surely fallen by the margin.
   *
   * @return empty if there is none
   */
  static Optional<Point> fallen(StorageCurve curve) {
    List<Point> points = curve.points();
    Point first = points.get(0);
    return points.stream()
        .filter(p -> !p.thin())
        .filter(p -> p.take().value() <= first.take().value() - curve.options().margin())
        .filter(p -> p.take().high() < first.take().low())
        .findFirst();
  }
}
