package org.taketally.publish;

import org.taketally.publish.privacy.Evidence;
import org.taketally.publish.privacy.JointTake;
import org.taketally.wording.Words;

/** The joint result of few people in words, and what is held back. */
final class JointWords {

  private JointWords() {}

  static String took(JointTake joint) {
    return "Of %s, %s took.".formatted(Words.count(joint.grafts(), "graft"), share(joint));
  }

  private static String share(JointTake joint) {
    return switch (joint.parts()) {
      case 10 -> PlainWords.inTen(joint.part() / 10.0);
      case 4 -> {
        String[] words = {
          "under a quarter",
          "a quarter to under a half",
          "a half to under three quarters",
          "three quarters or more"
        };
        yield words[joint.part()];
      }
      default -> joint.part() == 0 ? "under half" : "half or more";
    };
  }

  static String withheld(Evidence evidence) {
    return evidence.namesMembers()
        ? "Privacy: so few people made these grafts that any count would tell each of them the"
            + " others' results. Only their joint result is given, in round figures; results by"
            + " season, cultivar and rootstock are held back."
        : "Privacy: the records don't say who grafted, so nobody can see how many people stand"
            + " behind a line. Only the joint result is given, in round figures; results by"
            + " season, cultivar and rootstock are held back. With the grafter column filled in"
            + " more can be shown.";
  }
}
