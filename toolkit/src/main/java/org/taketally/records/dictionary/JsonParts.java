package org.taketally.records.dictionary;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.text.similarity.LevenshteinDistance;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** Takes the JSON of a dictionary apart, or says where it isn't what it should be. */
class JsonParts {

  private static final int TYPO = 2;

  private final String file;

  JsonParts(String file) {
    this.file = file;
  }

  void requireKeys(String path, JsonObject json, Set<String> known) {
    for (String key : json.keySet()) {
      if (!known.contains(key)) {
        List<String> sorted = known.stream().sorted().toList();
        String like =
            NameLikeness.nearest(key, sorted).map(n -> "; did you mean " + n + "?").orElse("");
        throw wrong(path + key, key, "one of " + sorted, "correct the name" + like);
      }
    }
  }

  JsonObject object(String path, JsonObject json, String key) {
    return json.has(key) ? requireObject(path + key, json.get(key)) : new JsonObject();
  }

  JsonObject requireObject(String path, JsonElement value) {
    if (!value.isJsonObject()) {
      throw wrong(path, value.toString(), "braces { }", "put names and values in braces");
    }
    return value.getAsJsonObject();
  }

  Optional<String> string(String path, JsonObject json, String key) {
    return json.has(key) ? Optional.of(text(path + key, json.get(key))) : Optional.empty();
  }

  String text(String path, JsonElement value) {
    if (!value.isJsonPrimitive()) {
      throw wrong(path, value.toString(), "a text in quotes", "put it in quotes");
    }
    return value.getAsString();
  }

  Optional<Set<String>> strings(String path, JsonObject json, String key) {
    return json.has(key) ? Optional.of(list(path + key, json.get(key))) : Optional.empty();
  }

  Set<String> list(String path, JsonElement value) {
    if (!value.isJsonArray()) {
      throw wrong(path, value.toString(), "a list in brackets [ ]", "put the texts in brackets");
    }
    List<String> texts = new ArrayList<>();
    value.getAsJsonArray().forEach(one -> texts.add(text(path, one).strip()));
    return new LinkedHashSet<>(texts);
  }

  RecordsUnreadable wrong(String path, String found, String expected, String remedy) {
    return new RecordsUnreadable(
        new Problem(Severity.ERROR, file, 0, path, found, expected, remedy));
  }

  void requirePattern(String path, String pattern) {
    if (DatePattern.of(pattern).isEmpty()) {
      throw wrong(
          path,
          pattern,
          "a pattern of d, M and y such as dd/MM/yyyy, or \"day-number\"",
          "dd or d is the day, MM or M the month, yyyy the year");
    }
  }

  /** Refuses a slip of the pen for one of our columns; other names are columns of the user. */
  String requireKnown(String name) {
    if (KnownColumns.isKnown(name) || KnownColumns.isListed(name)) {
      return name;
    }
    for (String known : KnownColumns.names()) {
      if (LevenshteinDistance.getDefaultInstance().apply(known, name) <= TYPO) {
        throw wrong(
            "columns", name, "a name of ours or of your own", "did you mean " + known + "?");
      }
    }
    return name;
  }
}
