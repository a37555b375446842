package org.taketally.publish;

import org.taketally.answers.FactorVerdict;
import org.taketally.answers.Words;

/** The verdict on rootstock as members read it. */
final class RootstockWords {

  private RootstockWords() {}

  static String verdict(FactorVerdict answer) {
    String margin = Words.points(answer.options().margin());
    return switch (answer.verdict()) {
      case MATTERS -> "Yes. Rootstocks took differently enough to matter.";
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
}
