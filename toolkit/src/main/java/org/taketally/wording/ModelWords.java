package org.taketally.wording;

import org.taketally.answers.Words;
import org.taketally.answers.adjusted.ModelChange;

/** What was done to a model, in words. */
public final class ModelWords {

  private ModelWords() {}

  /**
   * A change to the model asked for.
   *
   * @param change what was changed
   * @return a sentence or two
   */
  public static String of(ModelChange change) {
    String why = change.cause().map(cause -> Words.sentence(cause.getMessage()) + ". ").orElse("");
    return switch (change.kind()) {
      case PAIRINGS_LEFT_OUT ->
          "Pairings were left out of the model: too few cultivars were grafted on more than one"
              + " rootstock to tell their effect from that of the rootstock.";
      case VARIES_INSTEAD -> why + "Here it varies around a common mean instead.";
      case LEFT_OUT -> why + "Here it was left out.";
    };
  }
}
