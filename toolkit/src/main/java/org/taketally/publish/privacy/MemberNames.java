package org.taketally.publish.privacy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.taketally.cells.Factor;
import org.taketally.records.columns.NameLikeness;

/**
 * Which grafters' names stand for one member, and which for none. Two names that may be one person
 * count as one, so that nobody is hidden behind a second spelling of themselves: those alike but
 * for case, accents and signs, nearly alike, or one cut short. Letters and numbers given to tell
 * people apart do so ("Hand A", "Hand B"). Nobody in particular ("unknown"), and several people in
 * one name, count as no member.
 */
public final class MemberNames {

  /** Common practice, no source. */
  private static final Set<String> NOBODY =
      Set.of(
          "unknown",
          "various",
          "several",
          "mixed",
          "other",
          "others",
          "someone",
          "anyone",
          "nobody",
          "none",
          "na",
          "team",
          "group",
          "volunteers",
          "helpers",
          "unbekannt",
          "diverse",
          "varios",
          "desconocido");

  private static final Pattern TOGETHER = Pattern.compile("[&+]");
  private static final Pattern MAYBE_TOGETHER = Pattern.compile("[&+/,;]|(?i)\\b(?:and|with)\\b");
  private static final Pattern WORDS = Pattern.compile("[^\\p{L}\\p{N}]+");

  /** Words as short as this are given to tell people apart. */
  private static final int GIVEN = 2;

  /** Names compared with each other; beyond, only those alike but for case and signs are one. */
  private static final int COMPARED = 2000;

  private final List<String> names;
  private final int[] members;
  private final int count;

  private MemberNames(List<String> names, int[] members, int count) {
    this.names = names;
    this.members = members;
    this.count = count;
  }

  /**
   * Of the names as they stand in the records.
   *
   * @param names no name twice
   * @return the member each stands for
   */
  static MemberNames of(List<String> names) {
    int[] first = IntStream.range(0, names.size()).toArray();
    Map<String, Integer> byLetters = new LinkedHashMap<>();
    for (int i = 0; i < first.length; i++) {
      Integer known = byLetters.putIfAbsent(NameLikeness.plain(names.get(i)), i);
      if (known != null) {
        first[i] = known;
      }
      for (int j = 0; j < Math.min(i, COMPARED) && known == null; j++) {
        if (first[j] != first[i] && mayBeOne(names.get(i), names.get(j))) {
          join(first, first[i], first[j]);
        }
      }
    }
    int[] members = new int[first.length];
    Map<Integer, Integer> numbers = new LinkedHashMap<>();
    for (int i = 0; i < first.length; i++) {
      boolean none = isNobody(names.get(i), byLetters.keySet());
      members[i] = none ? Factor.MISSING : numbers.computeIfAbsent(first[i], key -> numbers.size());
    }
    return new MemberNames(List.copyOf(names), members, numbers.size());
  }

  private static void join(int[] first, int from, int to) {
    Arrays.setAll(first, i -> first[i] == from ? to : first[i]);
  }

  private static boolean mayBeOne(String one, String other) {
    return NameLikeness.mayBeOne(one, other) && !toldApart(one, other);
  }

  /** Whether names are alike word for word but for words given to tell people apart. */
  private static boolean toldApart(String one, String other) {
    String[] words = WORDS.split(one.strip());
    String[] others = WORDS.split(other.strip());
    if (words.length != others.length || words.length < 2) {
      return false;
    }
    boolean given = false;
    for (int w = 0; w < words.length; w++) {
      if (!words[w].equalsIgnoreCase(others[w])) {
        given |= words[w].length() <= GIVEN && others[w].length() <= GIVEN;
      }
    }
    return given;
  }

  private static boolean isNobody(String name, Set<String> letters) {
    String plain = NameLikeness.plain(name);
    List<String> parts =
        Arrays.stream(MAYBE_TOGETHER.split(name))
            .map(NameLikeness::plain)
            .filter(part -> !part.isEmpty())
            .toList();
    boolean several =
        parts.size() > 1
            && (TOGETHER.matcher(name).find() || parts.stream().anyMatch(letters::contains));
    return plain.isEmpty() || NOBODY.contains(plain) || several;
  }

  /** Number of the member a name stands for, {@link Factor#MISSING} if for none. */
  int member(int name) {
    return members[name];
  }

  /** How many members the names stand for. */
  int count() {
    return count;
  }

  /**
   * Names counted as one member, because they may be one person.
   *
   * @return the names of each such member, at least two
   */
  public List<List<String>> together() {
    List<List<String>> together = new ArrayList<>();
    for (int member = 0; member < count; member++) {
      List<String> own = namesOf(member);
      if (own.size() > 1) {
        together.add(own);
      }
    }
    return together;
  }

  /**
   * Names that count as no member: nobody in particular, or several people.
   *
   * @return as in the records
   */
  public List<String> nobody() {
    return namesOf(Factor.MISSING);
  }

  private List<String> namesOf(int member) {
    return IntStream.range(0, members.length)
        .filter(name -> members[name] == member)
        .mapToObj(names::get)
        .toList();
  }
}
