package org.taketally.wording;

import org.taketally.answers.adjusted.ModelChange;
import org.taketally.answers.adjusted.ModelChoice;
import org.taketally.answers.adjusted.SuggestedModel;
import org.taketally.cells.Cells;

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
      case LINE_INSTEAD -> why + "Here it is a straight line instead.";
      case LEFT_OUT -> why + "Here it was left out.";
    };
  }

  /**
   * A choice made when a model was suggested.
   *
   * @param choice what was decided
   * @return one sentence
   */
  public static String of(ModelChoice choice) {
    String what =
        choice.columns().isEmpty()
            ? "nothing"
            : Words.list(choice.columns().stream().map(ModelWords::word).toList());
    return switch (choice.kind()) {
      case RARELY_RECORDED ->
          "Not adjusted for %s: recorded for %d %% of the grafts only."
              .formatted(what, choice.recordedPercent());
      case ALL_ALIKE -> "Not adjusted for %s: all grafts are alike in it.".formatted(what);
      case ADJUSTED -> "Adjusted for %s.".formatted(what);
      case AS_CURVE -> "Adjusted for %s as a curve.".formatted(what);
      case AS_LINE -> "Adjusted for %s as a straight line.".formatted(what);
      case GROUP_RARELY_RECORDED ->
          "Left out: %s, recorded for %d %% of the grafts only."
              .formatted(what, choice.recordedPercent());
      case GROUP_OF_ONE -> "Left out: %s, nearly every graft has its own.".formatted(what);
      case TOO_MANY_ROWS ->
          "Left out: what rows of several grafts have in common, as there are more than %s of them."
              .formatted(Words.count(SuggestedModel.MOST_ROWS));
      case UNUSED ->
          "Not in the model unless it is named: %s. If grafts alike in one of them share their luck (a tray, a fridge batch), name it under \"batches\" in the dictionary, or as something that varies."
              .formatted(what);
      case VARIES -> "Varying around a common mean: " + what + ".";
    };
  }

  private static String word(String column) {
    return column.equals(Cells.BATCH_ROW)
        ? "rows of several grafts (if they scatter more than chance)"
        : Words.column(column);
  }
}
