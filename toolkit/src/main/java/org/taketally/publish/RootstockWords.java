package org.taketally.publish;

import org.taketally.answers.Estimate;
import org.taketally.answers.verdict.FactorVerdict;
import org.taketally.wording.Words;

/** The verdict on rootstock as members read it. */
final class RootstockWords {

  private RootstockWords() {}

  static String verdict(FactorVerdict answer) {
    String margin = Words.points(answer.options().margin());
    return switch (answer.verdict()) {
      case MATTERS -> "Yes. " + standingOut(answer);
      case DIFFERS_UNSETTLED ->
          "They differ, but these records can't say yet whether by more than " + margin + ".";
      case DEPENDS_ON_CULTIVAR ->
          "It depends on the cultivar: on some one rootstock takes more, on others less, by over "
              + margin
              + ".";
      case NO_PRACTICAL_DIFFERENCE ->
          "No practical difference: between any two of these rootstocks take differs by less than "
              + margin
              + ".";
      case LESS_THAN_YOU_CARE_ABOUT ->
          "They differ, but by less than " + margin + ", too little to change what you do.";
      case CANT_TELL_YET ->
          "Can't tell yet: these records are too few to say whether rootstocks differ by "
              + margin
              + " or not.";
      case ENTANGLED ->
          "These records can't say: the rootstocks weren't compared within the same cultivars,"
              + " hands and seasons.";
    };
  }

  private static String standingOut(FactorVerdict answer) {
    String worse = named(answer, false);
    String better = named(answer, true);
    if (worse.isEmpty() && better.isEmpty()) {
      return "Rootstocks took differently enough to matter.";
    }
    String lower = worse.isEmpty() ? "" : "Take was lower than on the others on " + worse + ".";
    String higher = better.isEmpty() ? "" : "Take was higher than on the others on " + better + ".";
    return (lower + " " + higher).strip();
  }

  /** Those that stand apart on one side of the middle of the others. */
  private static String named(FactorVerdict answer, boolean above) {
    double middle =
        answer.levels().stream()
            .filter(level -> !level.standsOut())
            .flatMap(level -> level.take().stream())
            .mapToDouble(Estimate::value)
            .average()
            .orElseGet(() -> mean(answer));
    return Words.list(
        answer.levels().stream()
            .filter(level -> level.standsOut() && level.take().isPresent())
            .filter(level -> level.take().orElseThrow().value() > middle == above)
            .map(l -> l.level() + " (" + PlainWords.inTen(l.take().orElseThrow().value()) + ")")
            .toList());
  }

  private static double mean(FactorVerdict answer) {
    return answer.levels().stream()
        .flatMap(level -> level.take().stream())
        .mapToDouble(Estimate::value)
        .average()
        .orElse(0);
  }
}
