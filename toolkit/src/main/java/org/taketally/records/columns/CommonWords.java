package org.taketally.records.columns;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Words that growers write for our columns and values, in several languages: data, in {@code
 * words.csv}. Of records they serve for proposals only; nothing is read by them. Order books and
 * lists of requests are read by them, which is said.
 */
public final class CommonWords {

  /** What a heading of the dead means, which is no column of ours. */
  public static final String DEAD = "dead";

  /** What a word under takes means that says that all grafts of the row took. */
  public static final String ALL_GRAFTS = "all";

  private static final String HEADING = "heading";
  private static final Pattern UNIT =
      Pattern.compile("[\\s(\\[]+(°?[CF]|mm|cm|in|inch|%)[)\\]]*$", Pattern.CASE_INSENSITIVE);

  /** Words that join others, in headings of several words. */
  private static final Set<String> JOINING =
      Set.of("de", "del", "di", "du", "da", "do", "der", "des", "of", "the", "la", "le", "el");

  private static final int SHORTEST = 3;
  private static final CommonWords ALL = load();

  private final Map<String, Map<String, Set<String>>> meanings = new LinkedHashMap<>();
  private final List<Heading> headings = new ArrayList<>();

  /** A heading by its single words. */
  private record Heading(List<String> words, String means) {}

  private CommonWords() {}

  private static CommonWords load() {
    CommonWords words = new CommonWords();
    try (InputStream in =
            CommonWords.class.getResourceAsStream("/org/taketally/records/words.csv");
        CsvReader<NamedCsvRecord> rows =
            CsvReader.builder()
                .ofNamedCsvRecord(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (NamedCsvRecord row : rows) {
        words
            .meanings
            .computeIfAbsent(row.getField("where"), where -> new LinkedHashMap<>())
            .computeIfAbsent(plain(row.getField("word")), word -> new LinkedHashSet<>())
            .add(row.getField("means"));
        if (row.getField("where").equals(HEADING)) {
          words.headings.add(new Heading(words(row.getField("word")), row.getField("means")));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return words;
  }

  /** Letters and digits without case and accents; a mark such as {@code ?} stays as it is. */
  private static String plain(String word) {
    String plain = NameLikeness.plain(word);
    return plain.isEmpty() ? word.strip().toLowerCase(Locale.ROOT) : plain;
  }

  /**
   * What a value of one of our columns is a common word for.
   *
   * @return our word, if there is one and only one
   */
  public static Optional<String> value(String column, String word) {
    return only(column, word);
  }

  /** Whether a value is a word we know in one of our columns, whatever it means. */
  public static boolean isValue(String column, String word) {
    return ALL.meanings.getOrDefault(column, Map.of()).containsKey(plain(word));
  }

  /**
   * Which of our columns a heading is a common word for.
   *
   * @return our names, in no order of likelihood, or {@code dead} for the dead beside takes and
   *     outcome; empty if it is none we know
   */
  public static Set<String> columns(String heading) {
    Set<String> whole = whole(HEADING, heading);
    return whole.isEmpty() ? cutShort(words(withoutUnit(heading))) : whole;
  }

  /**
   * Which columns of a list to plan by a heading is a common word for.
   *
   * @param list what the list is called in {@code words.csv}
   * @return its names; empty if it is none we know
   */
  public static Set<String> columnsOf(String list, String heading) {
    Set<String> own = whole(list, heading);
    return own.isEmpty() ? columns(heading) : own;
  }

  /**
   * The heading most like a common word for a column of a list to plan by.
   *
   * @param list what the list is called in {@code words.csv}
   * @param headings to choose from
   * @return empty if none is worth a guess
   */
  public static Optional<String> nearest(String list, String column, List<String> headings) {
    List<String> words =
        Stream.of(list, HEADING)
            .flatMap(where -> ALL.meanings.getOrDefault(where, Map.of()).entrySet().stream())
            .filter(word -> word.getValue().contains(column))
            .map(Map.Entry::getKey)
            .toList();
    return headings.stream()
        .filter(heading -> NameLikeness.nearest(heading, words).isPresent())
        .findFirst();
  }

  /** Whether a heading is a common word of a list to plan by itself, not of records alone. */
  public static boolean speaksOf(String list, String heading) {
    return !whole(list, heading).isEmpty();
  }

  private static Set<String> whole(String where, String heading) {
    Map<String, Set<String>> words = ALL.meanings.getOrDefault(where, Map.of());
    for (String one : List.of(heading, withoutUnit(heading))) {
      if (words.containsKey(plain(one))) {
        return words.get(plain(one));
      }
    }
    return Set.of();
  }

  private static String withoutUnit(String heading) {
    return UNIT.matcher(heading).replaceAll("");
  }

  /** The meanings of headings that begin like these words where they end with a dot. */
  private static Set<String> cutShort(List<String> words) {
    Set<String> means = new LinkedHashSet<>();
    if (words.stream().anyMatch(CommonWords::isCut)) {
      ALL.headings.stream()
          .filter(known -> known.words().size() == words.size())
          .filter(known -> IntStream.range(0, words.size()).allMatch(i -> like(words, known, i)))
          .forEach(known -> means.add(known.means()));
    }
    return means;
  }

  private static boolean like(List<String> words, Heading known, int place) {
    String word = plain(words.get(place));
    String whole = plain(known.words().get(place));
    boolean begins = isCut(words.get(place)) && word.length() >= SHORTEST;
    return begins ? whole.startsWith(word) : whole.equals(word);
  }

  private static boolean isCut(String word) {
    return word.endsWith(".");
  }

  private static List<String> words(String heading) {
    return Arrays.stream(heading.split("[\\s_/]+"))
        .filter(word -> !word.isEmpty() && !JOINING.contains(plain(word)))
        .toList();
  }

  /** Whether a heading is a common word for what groups grafts treated together. */
  public static boolean isBatch(String heading) {
    return Stream.concat(Stream.of(heading), Stream.of(heading.split("[^\\p{L}]+")))
        .anyMatch(word -> ALL.meanings.get("batch").containsKey(plain(word)));
  }

  private static Optional<String> only(String where, String word) {
    Set<String> means =
        ALL.meanings.getOrDefault(where, Map.of()).getOrDefault(plain(word), Set.of());
    return means.size() == 1 ? Optional.of(means.iterator().next()) : Optional.empty();
  }
}
