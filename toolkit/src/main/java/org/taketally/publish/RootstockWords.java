package org.taketally.publish;

import java.util.List;
import org.taketally.answers.FactorVerdict;
import org.taketally.answers.Words;

/** The verdict on rootstock as members read it. */
final class RootstockWords {

  private RootstockWords() {}

  static String verdict(FactorVerdict answer) {
    String margin = Words.points(answer.options().margin());
    return switch (answer.verdict()) {
      case MATTERS -> "Yes. " + standingOut(answer);
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
          "These records can't say: the rootstocks weren't compared within the same cultivars, hands"
              + " and seasons.";
    };
  }

  private static String standingOut(FactorVerdict answer) {
    List<String> named =
        answer.levels().stream()
            .filter(level -> level.standsOut() && level.take().isPresent())
            .map(l -> l.level() + " (" + PlainWords.inTen(l.take().get().value()) + ")")
            .toList();
    if (named.isEmpty()) {
      return "Rootstocks took differently enough to matter.";
    }
    return Words.list(named)
        + (named.size() == 1 ? " stands" : " stand")
        + " apart from the other rootstocks.";
  }
}
