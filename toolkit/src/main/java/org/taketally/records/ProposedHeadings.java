package org.taketally.records;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;

/** Finds which heading of a sheet seems to hold which column of ours. */
final class ProposedHeadings {

  private static final String GRAFTS = RecordColumn.GRAFTS.columnName();
  private static final String DAY = RecordColumn.GRAFT_DATE.columnName();
  private static final Pattern DEGREES =
      Pattern.compile(".*([°º]\\s*[CF]|\\btemp).*", Pattern.CASE_INSENSITIVE);

  private static final Pattern FAHRENHEIT = Pattern.compile("[°º]\\s*F|(?i)fahrenheit");

  private final ProposedSheet sheet;
  private final Map<String, String> found;

  ProposedHeadings(ProposedSheet sheet) {
    this.sheet = sheet;
    this.found = sheet.headings();
  }

  /** Whether a heading is one of ours, or a common word for one. */
  static boolean known(String heading) {
    return ours(heading) != null || !CommonWords.columns(heading).isEmpty();
  }

  /** The column of ours that has this name, in whatever case and spacing; null if none has. */
  private static String ours(String heading) {
    String plain = NameLikeness.plain(heading);
    return Arrays.stream(RecordColumn.values())
        .map(RecordColumn::columnName)
        .filter(name -> NameLikeness.plain(name).equals(plain))
        .findFirst()
        .orElse(null);
  }

  /** Fills in the headings of the sheet; asks where one may be several. */
  void find() {
    for (String heading : sheet.source().headings()) {
      String ours = ours(heading);
      if (ours != null) {
        found.putIfAbsent(ours, heading);
      }
    }
    for (String heading : sheet.source().headings()) {
      if (!found.containsValue(heading)) {
        meant(heading);
      }
    }
  }

  private void meant(String heading) {
    Set<String> open = candidates(heading);
    String storage = RecordColumn.STORAGE_TEMP_C.columnName();
    if (open.isEmpty() && DEGREES.matcher(heading).matches() && !found.containsKey(storage)) {
      JsonElement entry = temperature(heading);
      sheet
          .ask(
              "\"%s\" may be the temperature the budwood was kept at; add \"%s\": %s under"
                  + " \"columns\" if it is",
              heading, storage, entry)
          .choice("kept at that", entry, "columns", storage)
          .choice("another temperature", new JsonObject());
    } else if (open.size() == 1) {
      String name = open.iterator().next();
      found.put(name, heading);
      sheet.because("\"%s\" is a common word for %s", heading, name);
    } else if (open.size() > 1) {
      OpenQuestion question =
          sheet.ask(
              "\"%s\" may be %s; add it under \"columns\"", heading, String.join(" or ", open));
      open.forEach(name -> question.choice(name, new JsonPrimitive(heading), "columns", name));
    }
  }

  /** The entry of a column of temperatures, with its unit where the heading says one. */
  private static JsonElement temperature(String heading) {
    if (!FAHRENHEIT.matcher(heading).find()) {
      return new JsonPrimitive(heading);
    }
    JsonObject entry = new JsonObject();
    entry.addProperty("from", heading);
    entry.addProperty("unit", "F");
    return entry;
  }

  /** Our columns a heading may hold, by its word and by what stands below it. */
  private Set<String> candidates(String heading) {
    Set<String> open = new LinkedHashSet<>(CommonWords.columns(heading));
    open.removeAll(found.keySet());
    if (open.contains(GRAFTS) && open.contains(DAY)) {
      open.remove(sheet.values(heading).mostlyWhole() ? DAY : GRAFTS);
    }
    if (open.contains(RecordColumn.TAKES.columnName())
        || open.contains(RecordColumn.OUTCOME.columnName())) {
      open.clear();
      open.add(sheet.values(heading).result());
      open.removeAll(found.keySet());
    }
    return open;
  }
}
