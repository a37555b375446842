package org.taketally.wording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.taketally.plan.size.TrialQuestion;
import org.taketally.plan.size.TrialQuestion.Claim;
import org.taketally.plan.size.TrialSize;
import org.taketally.plan.size.TrialSize.Need;
import org.taketally.plan.size.TrialUnits;

/** How large a trial must be, in words. */
public final class TrialSizeWords {

  private static final int[] SIZES = {10, 20, 40, 60, 100, 150, 200, 300, 500, 800, 1200, 2000};

  /** A chance so much higher is another in words. */
  private static final double CLEARLY = 0.01;

  private final TrialSize size;

  private TrialSizeWords(TrialSize size) {
    this.size = size;
  }

  /**
   * The words for a size.
   *
   * @param size grafts for a difference and for none that matters
   * @return the words
   */
  public static TrialSizeWords of(TrialSize size) {
    return new TrialSizeWords(size);
  }

  /**
   * What finding the difference takes.
   *
   * @return one paragraph
   */
  public String difference() {
    TrialQuestion asked = size.question();
    if (size.difference().reason() == TrialSize.Reason.NOT_TRUE) {
      return "To find a difference: both stocks are supposed to take %s, so there is none to find; give another take for the second."
          .formatted(Words.statedPercent(asked.firstTake()));
    }
    return "To find a true difference (%s against %s): %s"
        .formatted(
            Words.statedPercent(asked.firstTake()),
            Words.statedPercent(asked.secondTake()),
            need(size.difference(), Claim.DIFFERENCE));
  }

  /**
   * What showing that none matters takes.
   *
   * @return one paragraph
   */
  public String equivalence() {
    return "To show that there is no difference of %s or more, if both truly take %s: %s"
        .formatted(
            Words.statedPoints(size.question().margin()),
            Words.statedPercent(size.question().firstTake()),
            need(size.equivalence(), Claim.EQUIVALENCE));
  }

  private String need(Need need, Claim claim) {
    String chance = chance(need, claim);
    return switch (need.reason()) {
      case ENOUGH_GRAFTS ->
          "%s. The trial then shows it with a chance of %s.".formatted(grafts(need), chance);
      case LARGER_UNITS ->
          "%s: the %s must hold %s instead of %d. The trial then shows it with a chance of %s."
              .formatted(
                  grafts(need),
                  beds(need.firstUnits().orElseThrow()),
                  Words.count(need.unitSize(), "graft"),
                  size.units().size(),
                  chance);
      case TOO_FEW_UNITS ->
          "no number of grafts is enough. With %s the chance stays %s even with endless grafts in each, because whole beds differ too. More beds help; more grafts in them don't."
              .formatted(
                  beds(size.mostUnits()),
                  need.mostChance() < 0.005
                      ? Words.percent(need.mostChance())
                      : "below %d %%".formatted((int) Math.ceil(100 * need.mostChance())));
      case NOT_TRUE -> "it isn't true of the takes supposed.";
    };
  }

  /** The chance wanted, or that of the trial where whole grafts and beds bring clearly more. */
  private String chance(Need need, Claim claim) {
    double wanted = size.question().power();
    double had =
        need.firstGrafts().isPresent()
            ? size.chance(need.firstGrafts().getAsInt(), claim)
            : need.mostChance();
    return had < wanted + CLEARLY ? Words.statedPercent(wanted) : Words.chance(had);
  }

  private String beds(int first) {
    int second = size.secondUnits(first);
    return first == second
        ? Words.count(first, "bed") + " of each stock"
        : "%s of the first stock and %s of the second"
            .formatted(Words.count(first, "bed"), Words.count(second));
  }

  private String grafts(Need need) {
    int first = need.firstGrafts().orElseThrow();
    int second = need.secondGrafts().orElseThrow();
    String grafts =
        first == second
            ? "%s on each stock, %s in all"
                .formatted(Words.count(first, "graft"), Words.count(2L * first))
            : "%s on the first stock and %s on the second"
                .formatted(Words.count(first, "graft"), Words.count(second));
    return need.firstUnits().isEmpty()
        ? grafts
        : grafts
            + " (%s of the first, %d of the second, %s in each)"
                .formatted(
                    Words.count(need.firstUnits().getAsInt(), "bed"),
                    need.secondUnits().orElseThrow(),
                    Words.count(need.unitSize(), "graft"));
  }

  /** That of the stock whose grafts tell less. */
  private double designEffect() {
    return Math.max(
        size.units().designEffect(size.question().firstTake()),
        size.units().designEffect(size.question().secondTake()));
  }

  private String independent() {
    String grafts = Words.amount(size.units().size() / designEffect(), "").strip();
    return grafts + (grafts.equals("1") ? " independent graft" : " independent grafts");
  }

  /**
   * What the numbers rest on.
   *
   * @return a paragraph each
   */
  public List<String> more() {
    List<String> more = new ArrayList<>();
    TrialUnits units = size.units();
    if (units.isSingle()) {
      more.add(
          "This counts each graft by itself. It holds where both stocks are grafted side by side,"
              + " by the same hands on the same days, in the same beds. Where a stock has beds,"
              + " trays or days of its own, say --bed, or far too few grafts are planned.");
    } else {
      more.add(
          "Each bed, tray or day holds one stock, so whole beds are compared: a bed of %s tells as much as %s. How far whole beds differ is your guess, or common practice without a source; your own records say better."
              .formatted(Words.count(units.size(), "graft"), independent()));
      if (size.question().nearAllOrNone()) {
        more.add(
            "So near to all or none, beds differ to one side only, and what is said of them is rough: of trials made up so, more than twice as many showed what is true as are promised here in one kind. Give what your own beds differ by (--bed-spread), or mix the stocks within every bed.");
      }
    }
    more.add(
        "The claims are those of the verdict, by its rules: of 100 such trials at most %s find a difference where there is none, and at most %s call stocks alike that differ by the margin."
            .formatted(
                Words.count(Math.round(100 * TrialQuestion.FALSE_DIFFERENCE)),
                Words.count(Math.round(100 * TrialQuestion.FALSE_EQUIVALENCE))));
    if (size.question().sharedSpread() > 0) {
      more.add(
          "Hands, days and cultivars that both stocks share are supposed to differ by %s in take (standard deviation). The analysis takes that out, so fewer grafts are needed than if they took alike."
              .formatted(Words.statedPoints(size.question().sharedSpread())));
    }
    if (size.question().offType() > 0) {
      more.add(offTypes());
    }
    more.add(
        "With more than two stocks each pair needs so many, and somewhat more, because the widest"
            + " of several gaps looks wide by chance. What your own layout could show, verdict by"
            + " verdict, is said by: plan layout --suppose.");
    return more;
  }

  private String offTypes() {
    double share = size.question().offType();
    double gap = size.question().firstTake() - size.question().secondTake();
    String mixed =
        "With %s of the seedlings off type %s\"no difference\" is shown of the mixed lot, not of the true stock.";
    return mixed.formatted(
        Words.statedPercent(share),
        gap == 0
            ? ""
            : "a difference of %s looks like one of %s, and "
                .formatted(Words.statedPoints(gap), Words.statedPoints((1 - share) * gap)));
  }

  /**
   * Headings of {@link #table}.
   *
   * @return one a column
   */
  public static List<String> headings() {
    return List.of("grafts on the first stock", "a difference", "none that matters");
  }

  /**
   * Chance of either claim by the number of grafts, in whole beds where a bed holds one stock.
   *
   * @return rows of three texts: grafts on the first stock, chance of finding the difference,
   *     chance of showing that none matters
   */
  public List<List<String>> table() {
    int bed = size.units().isSingle() ? 1 : size.units().size();
    long least = size.units().isSingle() ? 1 : (long) size.leastUnits() * bed;
    long most = size.units().most().isPresent() ? (long) size.mostUnits() * bed : Integer.MAX_VALUE;
    return Arrays.stream(SIZES)
        .map(grafts -> (grafts + bed - 1) / bed * bed)
        .filter(grafts -> grafts >= least && grafts <= most)
        .distinct()
        .mapToObj(this::row)
        .toList();
  }

  private List<String> row(int grafts) {
    return List.of(
        Words.count(grafts),
        size.question().firstTake() == size.question().secondTake()
            ? "–"
            : Words.chance(size.chance(grafts, Claim.DIFFERENCE)),
        Words.chance(size.chance(grafts, Claim.EQUIVALENCE)));
  }
}
