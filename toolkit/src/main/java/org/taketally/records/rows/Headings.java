package org.taketally.records.rows;

import com.google.gson.JsonArray;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.columns.SideBySide;
import org.taketally.records.columns.SizeLimits;
import org.taketally.records.dictionary.SheetRules;
import org.taketally.records.problems.DictionaryEntry;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/**
 * Which column of ours each heading of a sheet is: what the dictionary says, then our own names,
 * then our names in other case or spacing; all others are columns of the user's own.
 *
 * <p>A file of rows set aside has the headings of several sheets side by side. Each row is read by
 * those of its own sheet; headings under which that sheet's rows have nothing give way.
 */
public final class Headings {

  private static final String TAKES = RecordColumn.TAKES.columnName();

  private final String file;
  private final List<String> headings;
  private final Map<Integer, String> meaning = new LinkedHashMap<>();
  private final Map<Integer, String> respelled = new LinkedHashMap<>();
  private final Map<Integer, String> leftOut = new LinkedHashMap<>();
  private final List<String> ours;
  private final long line;
  private final int dead;

  /**
   * Reads the headings of a sheet.
   *
   * @param file where they stand
   * @param headings trimmed
   * @param rules of the dictionary for this sheet
   * @param ours the names we know
   * @param blank headings that give way, where those of several sheets stand side by side; else
   *     empty
   */
  public Headings(
      String file, List<String> headings, SheetRules rules, List<String> ours, Set<String> blank) {
    this.file = file;
    this.headings = headings;
    this.ours = ours;
    this.line = rules.headingRow();
    if (headings.size() > SizeLimits.COLUMNS) {
      throw unreadable(
          "more than %,d columns".formatted(SizeLimits.COLUMNS),
          "fewer",
          "take out columns that hold no records, or save the sheet by another delimiter");
    }
    requireUnique();
    Optional<String> saidDead = rules.column(RecordColumn.TAKES.columnName()).dead();
    this.dead = saidDead.or(this::perhapsDead).map(headings::indexOf).orElse(-1);
    Map<String, String> said = new HashMap<>();
    rules.columns().forEach((name, entry) -> said.put(entry.from().orElse(name), name));
    Set<String> passedOver = new HashSet<>(rules.ignore());
    passedOver.addAll(SetAside.ADDED);
    passedOver.add("");
    saidDead.ifPresent(passedOver::add);
    Set<String> first = new HashSet<>(passedOver);
    first.addAll(blank);
    understand(said, first);
    guess(first);
    for (String heading : headings) {
      boolean spare = blank.contains(heading) && !has(said.getOrDefault(heading, heading));
      if (!spare) {
        passedOver.add(heading);
      }
    }
    understand(said, passedOver);
    respell(passedOver);
  }

  /** A heading that is a common word for the dead; by it nothing is read, only asked. */
  private Optional<String> perhapsDead() {
    return headings.stream()
        .filter(heading -> CommonWords.columns(heading).equals(Set.of(CommonWords.DEAD)))
        .findFirst();
  }

  private void understand(Map<String, String> said, Set<String> passedOver) {
    for (int i = 0; i < headings.size(); i++) {
      String heading = headings.get(i);
      if (!passedOver.contains(heading)) {
        if (said.containsKey(heading)) {
          mean(i, said.get(heading));
        } else if (ours.contains(heading)) {
          mean(i, heading);
        }
      }
    }
  }

  /** Our names in other case or spacing, also where no row has anything under them. */
  private void respell(Set<String> passedOver) {
    for (int i = 0; i < headings.size(); i++) {
      String heading = headings.get(i);
      Optional<String> like = alike(heading);
      if (!passedOver.contains(heading)
          && !meaning.containsKey(i)
          && like.isPresent()
          && !has(like.get())) {
        respelled.put(i, like.get());
        mean(i, like.get());
      }
    }
  }

  private Optional<String> alike(String heading) {
    String plain = NameLikeness.plain(heading);
    return ours.stream().filter(name -> NameLikeness.plain(name).equals(plain)).findFirst();
  }

  private void guess(Set<String> passedOver) {
    for (int i = 0; i < headings.size(); i++) {
      String heading = headings.get(i);
      if (passedOver.contains(heading) || meaning.containsKey(i)) {
        continue;
      }
      Optional<String> like = alike(heading);
      if (like.isPresent() && !meaning.containsValue(like.get())) {
        respelled.put(i, like.get());
        mean(i, like.get());
      } else if (RecordsLayout.WORKED_OUT.contains(heading)) {
        leftOut.put(i, heading);
      } else {
        mean(i, heading);
      }
    }
  }

  private void mean(int field, String name) {
    meaning.forEach(
        (other, taken) -> {
          if (taken.equalsIgnoreCase(name)) {
            throw unreadable(
                headings.get(other) + ", " + headings.get(field),
                "one column for " + name,
                "ignore one of them in the dictionary, or take it out");
          }
        });
    meaning.put(field, name);
  }

  private void requireUnique() {
    Map<String, Long> counts =
        headings.stream()
            .filter(heading -> !heading.isEmpty())
            .collect(Collectors.groupingBy(h -> h, LinkedHashMap::new, Collectors.counting()));
    counts.forEach(
        (heading, count) -> {
          if (count > 1) {
            throw unreadable(
                String.join(", ", Collections.nCopies(Math.toIntExact(count), heading)),
                "each heading once",
                "give each a heading of its own that says what tells it apart (\"made Pellin\","
                    + " \"made Halden\"), or take out the others");
          }
        });
  }

  /** Field number to our name. */
  public Map<Integer, String> meaning() {
    return meaning;
  }

  /** Field number to our name, for headings that differ from ours in case or spacing. */
  public Map<Integer, String> respelled() {
    return respelled;
  }

  /** Fields that are worked out from others and therefore not read. */
  public Map<Integer, String> leftOut() {
    return leftOut;
  }

  public String heading(int field) {
    return headings.get(field);
  }

  public List<String> all() {
    return headings;
  }

  /** Field of the dead counted beside grafts and takes, or -1. */
  int dead() {
    return dead;
  }

  public boolean has(String name) {
    return meaning.containsValue(name);
  }

  /**
   * Refuses a sheet that lacks columns nothing can be done without: all of them at once, each with
   * the heading that may hold it.
   *
   * @param names needed columns; of several joined by a bar one is enough
   */
  public void require(List<String> names, SheetRules rules) {
    List<String> absent =
        names.stream()
            .filter(
                name ->
                    Arrays.stream(name.split("\\|"))
                        .noneMatch(one -> has(one) || rules.constants().containsKey(one)))
            .toList();
    if (absent.isEmpty()) {
      return;
    }
    String together = absent.stream().anyMatch(name -> name.startsWith(TAKES)) ? sideBySide() : "";
    String entries =
        absent.stream()
            .map(name -> name.split("\\|")[0])
            .filter(name -> !(name.equals(TAKES) && !together.isEmpty()))
            .map(name -> "\"%s\": \"%s\"".formatted(name, candidate(name)))
            .collect(Collectors.joining(", "));
    throw unreadable(
        headings.stream().filter(h -> !h.isEmpty()).collect(Collectors.joining(", ")),
        (absent.size() == 1 ? "a column " : "columns ")
            + absent.stream()
                .map(name -> name.replace("|", " or "))
                .collect(Collectors.joining(", ")),
        together
            + (entries.isEmpty()
                ? ""
                : "name the headings that hold them in the dictionary, e.g. \"columns\": {%s}; "
                    .formatted(entries))
            + "\"taketally dictionary suggest\" proposes one"
            + (absent.equals(List.of(RecordColumn.ROOTSTOCK.columnName()))
                ? "; if all stand on one, or nobody knows, say --rootstock NAME or --rootstock"
                    + " unknown"
                : ""));
  }

  /** What to say in the dictionary where results seem to stand side by side; else empty. */
  private String sideBySide() {
    Map<Integer, String> days = SideBySide.countingDays(headings);
    if (!days.isEmpty()) {
      return "if %s are counts of the same grafts so many days after grafting, say \"counts\": %s in the dictionary; "
          .formatted(quoted(days.values()), DictionaryEntry.counts(days));
    }
    Map<String, Map<String, String>> parts = SideBySide.parts(headings);
    if (parts.isEmpty()) {
      return "";
    }
    boolean seasons = SideBySide.seasons(parts.keySet());
    String name = seasons ? RecordColumn.SEASON.columnName() : RecordColumn.GRAFTER.columnName();
    JsonArray wide = new JsonArray();
    parts.forEach((value, columns) -> wide.add(DictionaryEntry.part(name, value, columns)));
    return "results of %s seem to stand side by side: say \"wide\": %s in the dictionary%s; "
        .formatted(
            quoted(parts.keySet()),
            wide,
            seasons
                ? ""
                : ", with rootstock, cultivar or site in place of grafter if that is what they are"
                    + (parts.values().stream().anyMatch(p -> p.size() > 1)
                        ? ""
                        : ", or name the last of them as takes if they are counts of the same"
                            + " grafts at several times"));
  }

  private static String quoted(Collection<String> names) {
    return names.stream().map(DictionaryEntry::quoted).collect(Collectors.joining(", "));
  }

  /** The heading that may hold one of our columns, by its meaning or its letters. */
  private String candidate(String name) {
    List<String> own = meaning.values().stream().filter(h -> !ours.contains(h)).toList();
    return own.stream()
        .filter(heading -> CommonWords.columns(heading).contains(name))
        .findFirst()
        .or(() -> NameLikeness.nearest(name, own))
        .orElse("your heading");
  }

  RecordsUnreadable unreadable(String found, String expected, String remedy) {
    return new RecordsUnreadable(
        new Problem(Severity.ERROR, file, line, "", found, expected, remedy));
  }
}
