package org.taketally.wording;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.plan.order.OnHand;

/** What the grafts and sticks there are give, in words. */
public final class OnHandWords {

  private OnHandWords() {}

  /**
   * What there is, line by line.
   *
   * @param lines of which the book says what there is
   * @return a paragraph each
   */
  public static List<String> of(List<OnHand> lines) {
    Map<List<Object>, List<OnHand>> cultivars = new LinkedHashMap<>();
    for (OnHand line : lines) {
      cultivars
          .computeIfAbsent(
              List.of(line.line().plainCultivar(), line.season()), k -> new ArrayList<>())
          .add(line);
    }
    boolean severalSeasons = lines.stream().mapToInt(OnHand::season).distinct().count() > 1;
    List<String> words = new ArrayList<>();
    for (List<OnHand> one : cultivars.values()) {
      if (one.size() > 1 && one.get(0).sticks().isPresent()) {
        words.add(
            "What there is. %s of %s%s share its sticks, those due first before others: each takes what it needs, the last what is left."
                .formatted(
                    Words.count(one.size(), "line"),
                    one.get(0).line().cultivar(),
                    severalSeasons ? " in one season" : ""));
      }
      one.forEach(line -> words.add("What there is. " + line(line)));
    }
    return words;
  }

  private static String due(OnHand line) {
    return line.line().due().map(" due %s"::formatted).orElse("");
  }

  private static String line(OnHand line) {
    String name = GraftOrderWords.name(line.line()) + due(line);
    if (line.grafts() == 0) {
      return "%s: nothing is there, or left, to graft.".formatted(name);
    }
    return "%s: %s%s give%s about %s (%s to %s in 8 seasons of 10); the %s wanted with a chance of %s."
        .formatted(
            name,
            Words.count(line.grafts(), "graft"),
            line.sticks().isPresent()
                ? " from " + Words.count(line.sticks().getAsInt(), "stick")
                : "",
            line.grafts() == 1 ? "s" : "",
            Words.count(Math.round(line.trees().expected()), "tree"),
            Words.count(line.trees().low()),
            Words.count(line.trees().high()),
            Words.count(line.line().trees()),
            Words.chance(line.chance()));
  }
}
