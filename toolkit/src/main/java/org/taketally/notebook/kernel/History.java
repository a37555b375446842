package org.taketally.notebook.kernel;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** The cells of this session, for as long as it lives; nothing is written to disk. */
final class History {

  private static final int SESSION = 1;

  private record Entry(int line, String input, String output) {

    JsonArray toJson(boolean withOutput) {
      JsonArray json = new JsonArray();
      json.add(SESSION);
      json.add(line);
      if (withOutput) {
        JsonArray both = new JsonArray();
        both.add(input);
        both.add(output.isEmpty() ? null : output);
        json.add(both);
      } else {
        json.add(input);
      }
      return json;
    }
  }

  private final List<Entry> entries = new ArrayList<>();

  synchronized void add(int line, String input, String output) {
    entries.add(new Entry(line, input, output));
  }

  /** Answers a {@code history_request}: {@code tail}, {@code range} or {@code search}. */
  synchronized JsonArray find(JsonObject request) {
    List<Entry> found =
        switch (Json.text(request, "hist_access_type", "tail")) {
          case "range" -> range(request);
          case "search" -> search(request);
          default -> last(entries, Json.number(request, "n", entries.size()));
        };
    boolean withOutput = Json.flag(request, "output", false);
    JsonArray history = new JsonArray();
    found.forEach(entry -> history.add(entry.toJson(withOutput)));
    return history;
  }

  private static List<Entry> last(List<Entry> all, int count) {
    return all.subList(Math.max(0, all.size() - Math.max(0, count)), all.size());
  }

  private List<Entry> range(JsonObject request) {
    int session = Json.number(request, "session", 0);
    if (session != SESSION && session != 0) {
      return List.of();
    }
    int start = Json.number(request, "start", 0);
    int stop = Json.number(request, "stop", Integer.MAX_VALUE);
    return entries.stream().filter(entry -> entry.line >= start && entry.line < stop).toList();
  }

  private List<Entry> search(JsonObject request) {
    Pattern pattern = glob(Json.text(request, "pattern", "*"));
    List<Entry> found =
        new ArrayList<>(
            entries.stream().filter(entry -> pattern.matcher(entry.input).matches()).toList());
    if (Json.flag(request, "unique", false)) {
      Map<String, Entry> latest = new LinkedHashMap<>();
      for (Entry entry : found) {
        latest.remove(entry.input);
        latest.put(entry.input, entry);
      }
      found = new ArrayList<>(latest.values());
    }
    return last(found, Json.number(request, "n", found.size()));
  }

  /** {@code *} stands for any text, {@code ?} for one character. */
  private static Pattern glob(String glob) {
    StringBuilder regex = new StringBuilder();
    for (int c : glob.codePoints().toArray()) {
      regex.append(
          c == '*' ? ".*" : c == '?' ? "." : Pattern.quote(new String(Character.toChars(c))));
    }
    return Pattern.compile(regex.toString(), Pattern.DOTALL);
  }
}
