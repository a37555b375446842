package org.taketally.wording.season;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.taketally.answers.effects.FactorImportance;
import org.taketally.answers.effects.FactorImportance.Importance;
import org.taketally.wording.language.Phrases;

/** What goes with take, never said to be its cause. */
public final class FactorWords {

  private static final int HEADLINE = 3;

  private final Phrases phrases;
  private final Takes takes;

  FactorWords(Phrases phrases) {
    this.phrases = phrases;
    this.takes = new Takes(phrases);
  }

  /**
   * Heading.
   *
   * @return a question
   */
  public String heading() {
    return phrases.say("factors");
  }

  /**
   * The first three and whatever ties with the last of them, ties said as ties; then what is as
   * large but may be chance, so that it isn't passed over in silence.
   *
   * @param answer factors that may be shown, largest first
   * @return a sentence or two
   */
  public String headline(FactorImportance answer) {
    Map<Long, List<String>> bySize = new TreeMap<>(Comparator.reverseOrder());
    for (Importance importance : answer.factors().stream().filter(Importance::sure).toList()) {
      long before = bySize.values().stream().mapToLong(List::size).sum();
      if (bySize.containsKey(points(importance)) || before < HEADLINE) {
        bySize
            .computeIfAbsent(points(importance), key -> new ArrayList<>())
            .add(phrases.column(importance.factor()));
      }
    }
    String most =
        bySize.entrySet().stream()
            .map(tie -> tie(tie.getValue(), phrases.points(tie.getKey() / 100.0)))
            .reduce((first, then) -> phrases.say("factors.then", first, then))
            .orElse("");
    return most.isEmpty()
        ? phrases.say("factors.none")
        : phrases.say("factors.most", most) + unsure(answer, Collections.min(bySize.keySet()));
  }

  private String unsure(FactorImportance answer, long least) {
    List<String> names =
        answer.factors().stream()
            .filter(importance -> !importance.sure() && points(importance) >= least)
            .map(m -> tie(List.of(phrases.column(m.factor())), Long.toString(points(m))))
            .toList();
    return names.isEmpty() ? "" : " " + phrases.say("factors.unsure", phrases.list(names));
  }

  private static long points(Importance importance) {
    return Math.round(100 * importance.typical().value());
  }

  private String tie(List<String> names, String size) {
    String key = names.size() == 1 ? "factors.one" : "factors.each";
    return phrases.say(key, phrases.list(names), size);
  }

  /**
   * Caption of the table.
   *
   * @return a few words
   */
  public String caption() {
    return phrases.say("factors.caption");
  }

  /**
   * Headings of the table.
   *
   * @return one per column
   */
  public List<String> headings() {
    return phrases.headings("factors.headings");
  }

  /**
   * A line of the table.
   *
   * @param importance a factor; its levels empty if they may not be named
   * @return one text per column
   */
  public List<String> row(Importance importance) {
    return List.of(
        takes.column(importance.factor()),
        phrases.say(
            "take.cell",
            phrases.points(importance.typical().value()),
            phrases.points(importance.typical().interval())),
        level(importance, importance.best()),
        level(importance, importance.worst()));
  }

  private String level(Importance importance, String level) {
    return level.isEmpty() ? SeasonWords.NOT_SHOWN : phrases.level(importance.factor(), level);
  }

  /**
   * That going together is not causing.
   *
   * @return two sentences
   */
  public String limits() {
    return phrases.say("factors.limits");
  }
}
