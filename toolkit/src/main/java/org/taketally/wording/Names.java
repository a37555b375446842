package org.taketally.wording;

import java.util.Locale;
import org.taketally.answers.Condition;
import org.taketally.answers.checks.FitChecks;
import org.taketally.answers.effects.Band;
import org.taketally.answers.prediction.SecondOpinions;
import org.taketally.answers.verdict.Verdict;
import org.taketally.wording.language.Language;
import org.taketally.wording.language.Phrases;

/** What values of enums are called, in lower case. */
public final class Names {

  private static final Phrases ENGLISH = Phrases.in(Language.ENGLISH);

  private Names() {}

  /**
   * A verdict.
   *
   * @param verdict any verdict
   * @return e.g. {@code no practical difference}
   */
  public static String of(Verdict verdict) {
    return ENGLISH.say("verdict." + verdict.name().toLowerCase(Locale.ROOT));
  }

  /**
   * A band of difficulty.
   *
   * @param band any band
   * @return e.g. {@code middling}
   */
  public static String of(Band band) {
    return ENGLISH.say("band." + band.name().toLowerCase(Locale.ROOT));
  }

  /**
   * How a check came out.
   *
   * @param state any state
   * @return e.g. {@code fine}
   */
  public static String of(FitChecks.State state) {
    return state.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /**
   * A way of predicting.
   *
   * @param way any way
   * @return e.g. {@code random forest}
   */
  public static String of(SecondOpinions.Way way) {
    return switch (way) {
      case THIS_MODEL -> "this model";
      case RIDGE -> "ridge logistic regression";
      case FOREST -> "random forest";
      case SAME_CHANCE -> "same chance for every graft";
    };
  }

  /**
   * A column at a level or number.
   *
   * @param condition e.g. a column {@code storage_days} at 4
   * @return e.g. {@code storage days 4}, {@code grafter C}
   */
  public static String of(Condition condition) {
    String column = Words.beforeLevel(condition.column());
    if (condition.isNumber()) {
      return column + " " + number(condition.number());
    }
    boolean named = condition.level().startsWith(column + " ");
    return named ? condition.level() : column + " " + condition.level();
  }

  private static String number(double value) {
    return value == Math.rint(value) ? Words.amount(value, "") : Double.toString(value);
  }
}
