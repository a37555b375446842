package org.taketally.publish;

import org.taketally.answers.effects.TakeCurve;
import org.taketally.answers.effects.TakeCurve.Point;
import org.taketally.wording.Words;

/** What a storage curve says to members. */
final class StorageWords {

  private StorageWords() {}

  static String headline(TakeCurve curve) {
    Point first = curve.points().get(0);
    Point last = curve.points().get(curve.points().size() - 1);
    return "%s at %s, %s at %s."
        .formatted(
            Words.sentence(PlainWords.take(first.take())),
            Words.amount(first.value(), curve.unit()),
            PlainWords.take(last.take()),
            Words.amount(last.value(), curve.unit()));
  }
}
