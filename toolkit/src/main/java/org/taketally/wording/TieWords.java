package org.taketally.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.taketally.answers.confounding.Confounding.EachItsOwn;
import org.taketally.answers.confounding.Confounding.HeldTogether;
import org.taketally.answers.confounding.Confounding.LevelAlone;
import org.taketally.answers.confounding.Confounding.LevelsAlone;
import org.taketally.answers.confounding.Confounding.OneEach;
import org.taketally.answers.confounding.Confounding.SetsApart;
import org.taketally.answers.confounding.Confounding.Tie;

/** What a tie between two columns means, in words. */
public final class TieWords {

  private static final int MOST_NAMED = 3;

  private final Tie tie;
  private final String factor;
  private final String other;

  private TieWords(Tie tie) {
    this.tie = tie;
    this.factor = Words.column(tie.factor());
    this.other = Words.column(tie.other());
  }

  /**
   * A tie in words.
   *
   * @param tie a tie
   * @return a sentence or a few, levels named
   */
  public static String sentence(Tie tie) {
    return new TieWords(tie).sentence();
  }

  private String sentence() {
    if (tie.detail() instanceof EachItsOwn) {
      return "Each %s went with its own %s: the records can't tell the one from the other."
          .formatted(other, factor);
    }
    if (tie.detail() instanceof SetsApart apart) {
      return sets(apart);
    }
    if (tie.detail() instanceof LevelsAlone alone) {
      return alone(alone.levels());
    }
    if (tie.detail() instanceof HeldTogether held) {
      return held(held);
    }
    return batches((OneEach) tie.detail());
  }

  private String sets(SetsApart apart) {
    return "The levels of %s fall into %d sets that never shared a %s (%s): sets can't be compared."
        .formatted(
            factor,
            apart.sets().size(),
            other,
            apart.sets().stream().map(Words::list).collect(Collectors.joining("; ")));
  }

  private String alone(List<LevelAlone> alone) {
    List<String> sentences = new ArrayList<>();
    for (LevelAlone level : alone.subList(0, Math.min(MOST_NAMED, alone.size()))) {
      String where =
          level.partners() == 1
              ? place(tie.other(), level.partner())
              : "with %d levels of %s".formatted(level.partners(), other);
      sentences.add(
          "%s %s was used only %s, where no other %s was: the two can't be told apart."
              .formatted(factor, level.level(), where, factor));
    }
    return Words.sentence(String.join(" ", sentences)) + more(alone.size() - MOST_NAMED);
  }

  private String held(HeldTogether held) {
    String here = place(tie.factor(), held.level());
    String there = place(tie.other(), held.partner());
    String sentence =
        "%s of the grafts %s were %s, and %s of the grafts %s were %s: only %s of the information"
            + " about %s is left once the %s is allowed for, so the two can hardly be told apart.";
    return sentence.formatted(
            Words.percent(held.shareOfLevel()),
            here,
            there,
            Words.percent(held.shareOfPartner()),
            there,
            here,
            Words.percent(tie.efficiency()),
            held.level(),
            other)
        + more(held.more());
  }

  private String batches(OneEach each) {
    String how =
        each.onlyOne()
            ? "Each %s held one %s only".formatted(other, factor)
            : "Within a %s there was mostly one %s".formatted(other, factor);
    return tie.refuses()
        ? "%s, and there are only %d of them: what is the %s and what the %s can't be told apart."
            .formatted(how, each.batches(), factor, other)
        : "%s: the comparison is between %d of them, so it is as sure as that number allows, not"
                .formatted(how, each.batches())
            + " as the number of grafts.";
  }

  /** As in "the grafts of Orrin", "in 2024", "by grafter C". */
  private static String place(String column, String level) {
    String preposition =
        switch (column) {
          case "cultivar" -> "of ";
          case "rootstock", "interstock" -> "on ";
          case "grafter", "method" -> "by ";
          case "season" -> "in ";
          case "site" -> "at ";
          default -> "with " + Words.column(column) + " ";
        };
    return preposition + level;
  }

  private String more(int others) {
    return others <= 0
        ? ""
        : " The same holds for %s of %s.".formatted(Words.count(others, "more level"), factor);
  }
}
