package org.taketally.publish;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.taketally.publish.privacy.Evidence;
import org.taketally.publish.privacy.PublishedTable;

/**
 * Names that may not stand on a published page beside a result: of members and sites, of levels
 * counted together, of levels behind which too few members stand.
 */
final class WithheldNames {

  private static final Set<String> PEOPLE = Set.of(SeasonFacts.GRAFTER, SeasonFacts.SITE, "block");

  /** A person behind a letter is still a person to those who know the circle. */
  private static final Pattern CODED_PERSON = Pattern.compile("(?i:\\bgrafter) [A-Z]+\\b");

  private final Set<String> names = new LinkedHashSet<>();

  /**
   * For a page.
   *
   * @param facts its counts
   * @param columns columns whose levels answers may name
   */
  WithheldNames(SeasonFacts facts, Collection<String> columns) {
    facts.cultivarTable().ifPresent(table -> add(table.merged()));
    facts.rootstockTable().ifPresent(table -> add(table.merged()));
    facts.seasonTable().ifPresent(table -> add(table.merged()));
    withholdAllOf(facts, "cultivar", facts.cultivarTable());
    withholdAllOf(facts, "rootstock", facts.rootstockTable());
    PEOPLE.forEach(column -> add(facts.evidence(List.of(column)).levels(column)));
    for (String column : columns) {
      Evidence evidence = facts.evidence(List.of(column));
      for (String level : evidence.levels(column)) {
        if (!evidence.allows(evidence.level(column, level), facts.options().rule())) {
          add(List.of(level));
        }
      }
    }
  }

  /** Without a published table of a column, none of its names may stand beside a result. */
  private void withholdAllOf(SeasonFacts facts, String column, Optional<PublishedTable> table) {
    if (table.isEmpty()) {
      add(facts.evidence().levels(column));
    }
  }

  private void add(Collection<String> more) {
    more.stream()
        .filter(name -> !name.isBlank())
        .map(name -> name.strip().toLowerCase(Locale.ROOT))
        .forEach(names::add);
  }

  /** Whether a text holds none of the names, as words of their own. */
  boolean allow(String text) {
    String lower = text.toLowerCase(Locale.ROOT);
    return !CODED_PERSON.matcher(text).find()
        && names.stream().noneMatch(name -> holds(lower, name));
  }

  private static boolean holds(String text, String name) {
    for (int at = text.indexOf(name); at >= 0; at = text.indexOf(name, at + 1)) {
      if (!letterAt(text, at - 1) && !letterAt(text, at + name.length())) {
        return true;
      }
    }
    return false;
  }

  private static boolean letterAt(String text, int place) {
    return place >= 0 && place < text.length() && Character.isLetterOrDigit(text.charAt(place));
  }
}
