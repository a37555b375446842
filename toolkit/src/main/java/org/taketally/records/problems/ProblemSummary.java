package org.taketally.records.problems;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/**
 * The problems of a reading, equal ones together: five thousand dates in the wrong pattern are one
 * line with examples.
 *
 * @param groups errors first, then checks, then notes; within these in the order found
 */
public record ProblemSummary(List<Group> groups) {

  private static final int EXAMPLES = 3;

  /**
   * These problems, then others.
   *
   * @param others of other files
   * @return all of them
   */
  public ProblemSummary and(ProblemSummary others) {
    return new ProblemSummary(Stream.concat(groups.stream(), others.groups.stream()).toList());
  }

  /**
   * Equal problems of one column of one file.
   *
   * @param kind what is wrong
   * @param file the file as named by the user
   * @param column the column as spelt in the file, or empty
   * @param count how many, 1 or more
   * @param first the first of them, at least 1
   */
  public record Group(
      ProblemKind kind, String file, String column, long count, List<Problem> first) {

    public Group {
      first = List.copyOf(first);
    }

    /**
     * How grave it is: for cells that can't be read, whether the row was set aside.
     *
     * @return error, check or note
     */
    public Severity severity() {
      return first.get(0).severity();
    }

    /**
     * The group in one sentence.
     *
     * @return the problem itself if it is alone, else how many, where, examples and the remedy
     */
    public String sentence() {
      Problem example = first.get(0);
      if (count == 1) {
        return example.sentence();
      }
      StringBuilder text = new StringBuilder(file);
      if (!column.isEmpty()) {
        text.append(", column ").append(column);
      }
      text.append(": ").append(examples());
      if (!example.expected().isEmpty()) {
        text.append("; expected ").append(example.expected());
      }
      return text.append("; ").append(example.remedy()).toString();
    }

    /**
     * How many there are, and the first few.
     *
     * @return e.g. {@code 12 dates that can't be read, line 3 "31.2.", line 9 "?", ...}
     */
    public String examples() {
      String shown =
          first.stream().limit(EXAMPLES).map(Group::seen).collect(Collectors.joining(", "));
      return String.format(Locale.ROOT, "%,d %s, ", count, kind.plural())
          + shown
          + (count > EXAMPLES ? ", ..." : "");
    }

    private static String seen(Problem problem) {
      String found = "\"" + problem.foundInOneLine() + "\"";
      return problem.line() > 0 ? "line " + problem.line() + " " + found : found;
    }
  }

  public ProblemSummary {
    groups = List.copyOf(groups);
  }

  public static ProblemSummary of(ProblemLog log) {
    return new ProblemSummary(
        log.tallies().entrySet().stream()
            .map(
                entry ->
                    new Group(
                        entry.getKey().kind(),
                        entry.getKey().file(),
                        entry.getKey().column(),
                        entry.getValue().count(),
                        entry.getValue().first()))
            .sorted(Comparator.comparing(Group::severity))
            .toList());
  }

  /**
   * How many problems there are of a severity.
   *
   * @param severity error, check or note
   * @return 0 or more
   */
  public long count(Severity severity) {
    return groups.stream()
        .filter(group -> group.severity() == severity)
        .mapToLong(Group::count)
        .sum();
  }

  /**
   * How many problems there are of a kind.
   *
   * @param kind the kind
   * @return 0 or more
   */
  public long count(ProblemKind kind) {
    return groups.stream().filter(group -> group.kind() == kind).mapToLong(Group::count).sum();
  }

  /**
   * All groups, one line each, the severity in front.
   *
   * @return e.g. {@code error walnut-2024.csv line 17, column takes: ...}; empty if all is well
   */
  public String text() {
    return groups.stream()
        .map(
            group ->
                group.kind().severity().name().toLowerCase(Locale.ROOT)
                    + " "
                    + group.sentence()
                    + "\n")
        .collect(Collectors.joining());
  }
}
