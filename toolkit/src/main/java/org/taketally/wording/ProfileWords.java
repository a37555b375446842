package org.taketally.wording;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.Locale;
import java.util.stream.Collectors;
import org.taketally.answers.adjusted.ProfileRanges;

/** Ranges by profile likelihood, for people and for other programs. */
public final class ProfileWords {

  private ProfileWords() {}

  /**
   * In words.
   *
   * @param profile ranges
   * @return a line each, logits
   */
  public static String text(ProfileRanges profile) {
    return profile.ranges().stream().map(ProfileWords::line).collect(Collectors.joining("\n"));
  }

  private static String line(ProfileRanges.Range range) {
    String term = Words.column(range.term());
    return String.format(
        Locale.ROOT,
        "%s%s: %.3f (%.3f to %.3f)",
        range.standardDeviation() ? "spread of " + term : term,
        range.level().isEmpty() ? "" : " " + range.level(),
        range.estimate(),
        range.interval().low(),
        range.interval().high());
  }

  /**
   * For other programs.
   *
   * @param profile ranges
   * @return keys term, level, standardDeviation (true or false), estimate, low, high; logits
   */
  public static JsonArray json(ProfileRanges profile) {
    JsonArray array = new JsonArray();
    for (ProfileRanges.Range range : profile.ranges()) {
      JsonObject one = new JsonObject();
      one.addProperty("term", range.term());
      one.addProperty("level", range.level());
      one.addProperty("standardDeviation", range.standardDeviation());
      one.add("estimate", JsonValues.number(range.estimate()));
      JsonValues.range(one, range.interval());
      array.add(one);
    }
    return array;
  }
}
