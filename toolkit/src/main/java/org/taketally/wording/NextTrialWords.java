package org.taketally.wording;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.taketally.plan.layout.LayoutPlan;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.plan.next.NextTrial;
import org.taketally.plan.next.NextTrial.OpenPair;
import org.taketally.plan.size.VerdictChances;

/** What to graft next, in words. */
public final class NextTrialWords {

  private static final int MOST_PAIRS = 6;

  /** A chance that may be off by more than this is said to be rough. */
  private static final double ROUGH = 0.15;

  private final NextTrial next;

  private NextTrialWords(NextTrial next) {
    this.next = next;
  }

  /**
   * The words for a plan.
   *
   * @param next what to graft next
   * @return the words
   */
  public static NextTrialWords of(NextTrial next) {
    return new NextTrialWords(next);
  }

  /**
   * What to graft.
   *
   * @return one paragraph
   */
  public String headline() {
    String now =
        "The records as they are say: %s (%s)."
            .formatted(
                Names.of(next.now().verdict()), Words.count(next.now().tally().grafts(), "graft"));
    return switch (next.state()) {
      case SETTLED -> now + " That is settled: nothing needs to be added for it.";
      case MORE_GRAFTS -> now + " " + toAdd();
      case OUT_OF_REACH ->
          "%s Even %s more would probably not settle it: allow more (--most), or ask with a wider or narrower margin (--margin). %s"
              .formatted(now, Words.count(next.layout().orElseThrow().grafts(), "graft"), toAdd());
      case BRIDGE ->
          now
              + " Groups of rootstocks were never compared with one another; bridging grafts come"
              + " first. "
              + toAdd();
    };
  }

  private String toAdd() {
    TrialLayout layout = next.layout().orElseThrow();
    LayoutPlan plan = layout.plan();
    return "Add %s: %s on %s, side by side, by %s on %s, %s a plot."
        .formatted(
            Words.count(layout.grafts(), "graft"),
            Words.list(plan.cultivars()),
            Words.list(plan.rootstocks()),
            Words.list(plan.grafters()),
            Words.count(plan.days().size(), "day"),
            Words.count(plan.graftsPerPlot()));
  }

  /**
   * Why, and what it would bring.
   *
   * @return a paragraph each
   */
  public List<String> more() {
    List<String> more = new ArrayList<>();
    if (next.state() == NextTrial.State.SETTLED) {
      return more;
    }
    if (!next.open().isEmpty()) {
      String pairs =
          next.open().stream()
              .limit(MOST_PAIRS)
              .map(pair -> pair.rootstock() + " and " + pair.other())
              .collect(Collectors.joining("; "));
      String others =
          next.open().size() > MOST_PAIRS
              ? "; and %d more".formatted(next.open().size() - MOST_PAIRS)
              : "";
      more.add(
          (next.state() == NextTrial.State.BRIDGE ? "To be linked: " : "Not settled yet: ")
              + pairs
              + others
              + ".");
    }
    more.add("Chance that it is settled as things are: none.");
    next.after().ifPresent(after -> more.add(after(after)));
    if (next.fallsShort() && next.state() != NextTrial.State.OUT_OF_REACH) {
      more.add(
          "You asked for a chance of %s: these are as many as there can be (--most), in plots of one size. Allow more, or be content with less (--chance)."
              .formatted(Words.statedPercent(next.wanted())));
    }
    next.after()
        .filter(after -> after.uncertainty(after.settled()) > ROUGH)
        .ifPresent(
            after ->
                more.add(
                    "That is rough: --trials %d brings it to within %s."
                        .formatted(VerdictChances.trialsWithin(ROUGH), Words.points(ROUGH))));
    if (next.perhapsShort()) {
      more.add(
          "You asked for a chance of %s: this is less, but by no more than it may be off."
              .formatted(Words.statedPercent(next.wanted())));
    }
    if (next.reckoned().isPresent()) {
      more.add(
          "By the widths of the ranges alone, from which the number of grafts was worked out first, the chance would be %s; what was tried counts."
              .formatted(Words.aboutChance(next.reckoned().getAsDouble())));
    }
    more.add(
        "Wood, stocks and grafting as most often in your records are supposed. Graft each cultivar"
            + " on all these stocks in the same session: what is grafted apart compares nothing.");
    return more;
  }

  private static String after(VerdictChances after) {
    return "Chance that it is settled with these grafts added: %s (give or take %s; from %s of grafts made up as your records let expect, each judged like records)."
        .formatted(
            Words.chance(after.settled()),
            Words.points(after.uncertainty(after.settled())),
            Words.count(after.trials(), "set"));
  }

  /**
   * As JSON; keys are documented in docs/planning.md.
   *
   * @return an object
   */
  public JsonObject json() {
    JsonObject json = new JsonObject();
    json.addProperty("verdict", Names.of(next.now().verdict()));
    json.addProperty("state", PlanJson.camel(next.state()));
    JsonArray open = new JsonArray();
    for (OpenPair pair : next.open()) {
      JsonObject one = new JsonObject();
      one.addProperty("rootstock", pair.rootstock());
      one.addProperty("other", pair.other());
      open.add(one);
    }
    json.add("open", open);
    json.addProperty("wanted", next.wanted());
    json.addProperty("fallsShort", next.fallsShort());
    json.addProperty(
        "reckoned", next.reckoned().isPresent() ? next.reckoned().getAsDouble() : null);
    next.layout().ifPresent(layout -> json.add("layout", PlanJson.of(layout)));
    next.after().ifPresent(after -> json.add("after", PlanJson.of(after)));
    return json;
  }
}
