package org.taketally.publish;

import org.taketally.answers.AnswerOptions.Bands;
import org.taketally.answers.effects.Band;
import org.taketally.answers.effects.Difficulty.CultivarTake;
import org.taketally.wording.Names;

/** How hard a cultivar is: a plain word only where its likely range lies within the band. */
final class BandWords {

  private BandWords() {}

  static String of(CultivarTake cultivar, Bands bands) {
    return cultivar.band() == Band.CANT_TELL || clear(cultivar, bands)
        ? Names.of(cultivar.band())
        : "probably " + Names.of(cultivar.band());
  }

  /** Whether the whole likely range lies within the band. */
  static boolean clear(CultivarTake cultivar, Bands bands) {
    return switch (cultivar.band()) {
      case HARD -> cultivar.take().high() < bands.hardBelow();
      case EASY -> cultivar.take().low() >= bands.easyFrom();
      case MIDDLING ->
          cultivar.take().low() >= bands.hardBelow() && cultivar.take().high() < bands.easyFrom();
      case CANT_TELL -> false;
    };
  }
}
