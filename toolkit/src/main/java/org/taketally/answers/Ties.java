package org.taketally.answers;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.taketally.answers.Entanglement.Tie;
import org.taketally.answers.Entanglement.TieKind;
import org.taketally.cells.Cells;
import org.taketally.cells.Factor;

/** Finds the ties between two factors and says what they mean. */
final class Ties {

  /** Below this share of the information left, a level's comparison is called tied. */
  static final double TIED_BELOW = 0.25;

  /** Fewer grafts of a level than this are not worth a word. */
  private static final int GRAFTS_WORTH_A_WORD = 10;

  private final Cells cells;
  private final AnswerOptions options;

  Ties(Cells cells, AnswerOptions options) {
    this.cells = cells;
    this.options = options;
  }

  /** The tie of {@code factor} to {@code other}, if there is one; {@code asked}: it is compared. */
  Optional<Tie> between(Factor factor, Factor other, boolean asked) {
    Meetings met = new Meetings(cells, factor, other);
    if (met.levelsSeen() < 2 || met.partnersSeen() < 2) {
      return Optional.empty();
    }
    List<List<Integer>> groups = met.groups();
    if (groups.size() == met.levelsSeen()) {
      return Optional.of(sameThing(factor, other, asked));
    }
    if (groups.size() > 1) {
      return Optional.of(apart(factor, other, met, asked));
    }
    List<Integer> tied =
        IntStream.range(0, factor.size())
            .filter(a -> met.grafts(a) >= (asked ? 1 : GRAFTS_WORTH_A_WORD))
            .filter(a -> met.efficiency(a) < TIED_BELOW)
            .boxed()
            .sorted(Comparator.comparingDouble(met::efficiency))
            .toList();
    return tied.isEmpty() ? Optional.empty() : Optional.of(loosely(factor, other, met, tied));
  }

  private static Tie sameThing(Factor factor, Factor other, boolean asked) {
    String sentence =
        "Each %s went with its own %s: the records can't tell the one from the other."
            .formatted(Words.column(other.name()), Words.column(factor.name()));
    return new Tie(TieKind.SAME_THING, factor.name(), other.name(), 0, asked, sentence);
  }

  private Tie apart(Factor factor, Factor other, Meetings met, boolean asked) {
    List<List<Integer>> groups = met.groups();
    List<Integer> alone =
        groups.stream().filter(group -> group.size() == 1).map(group -> group.get(0)).toList();
    String sentence =
        alone.isEmpty() ? sets(factor, other, groups) : alone(factor, other, met, alone);
    return new Tie(TieKind.NEVER_TOGETHER, factor.name(), other.name(), 0, asked, sentence);
  }

  private String sets(Factor factor, Factor other, List<List<Integer>> groups) {
    String what = Words.column(factor.name());
    return "The levels of %s fall into %d sets that never shared a %s (%s): sets can't be compared."
        .formatted(
            what,
            groups.size(),
            Words.column(other.name()),
            groups.stream()
                .map(group -> Words.list(group.stream().map(i -> name(factor, i)).toList()))
                .collect(Collectors.joining("; ")));
  }

  private String alone(Factor factor, Factor other, Meetings met, List<Integer> alone) {
    List<String> sentences = new ArrayList<>();
    for (int level : alone.subList(0, Math.min(3, alone.size()))) {
      String where =
          met.partners(level) == 1
              ? place(other, met.mainPartner(level))
              : "with %d levels of %s".formatted(met.partners(level), Words.column(other.name()));
      sentences.add(
          "%s %s was used only %s, where no other %s was: the two can't be told apart."
              .formatted(
                  Words.column(factor.name()),
                  name(factor, level),
                  where,
                  Words.column(factor.name())));
    }
    return Words.sentence(String.join(" ", sentences)) + more(alone.size() - 3, factor);
  }

  private Tie loosely(Factor factor, Factor other, Meetings met, List<Integer> tied) {
    int level = tied.get(0);
    int partner = met.mainPartner(level);
    double ofLevel = met.shareOfLevel(level, partner);
    String here = place(factor, level);
    String there = place(other, partner);
    String sentence =
        "%s of the grafts %s were %s, and %s of the grafts %s were %s: only %s of the information"
            + " about %s is left once the %s is allowed for, so the two can hardly be told apart.";
    return new Tie(
        ofLevel >= 0.5 ? TieKind.ONE_HOLDS_MOST : TieKind.MOSTLY_TOGETHER,
        factor.name(),
        other.name(),
        met.efficiency(level),
        false,
        sentence.formatted(
                Words.percent(ofLevel),
                here,
                there,
                Words.percent(met.shareOfPartner(level, partner)),
                there,
                here,
                Words.percent(met.efficiency(level)),
                name(factor, level),
                Words.column(other.name()))
            + more(tied.size() - 1, factor));
  }

  private String name(Factor factor, int level) {
    return GrafterLabels.shown(factor, options).get(level);
  }

  /** As in "the grafts of Orrin", "in 2024", "by grafter C". */
  private String place(Factor factor, int level) {
    String preposition =
        switch (factor.name()) {
          case "cultivar" -> "of ";
          case "rootstock", "interstock" -> "on ";
          case "grafter", "method" -> "by ";
          case "season" -> "in ";
          case "site" -> "at ";
          default -> "with " + Words.column(factor.name()) + " ";
        };
    return preposition + name(factor, level);
  }

  private static String more(int others, Factor factor) {
    return others <= 0
        ? ""
        : " The same holds for %s of %s."
            .formatted(Words.count(others, "more level"), Words.column(factor.name()));
  }
}
