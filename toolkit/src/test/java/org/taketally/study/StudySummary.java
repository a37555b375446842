package org.taketally.study;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.taketally.answers.counts.TakeRateInterval;
import org.taketally.terms.Interval;

/** What the study found, kind by kind, the worst first. */
final class StudySummary {

  private static final double EXACT = 1e-9;

  private static final Set<String> DIFFER = Set.of("DIFFERS_UNSETTLED", "LESS_THAN_YOU_CARE_ABOUT");

  /** What a verdict may claim; each may be wrong on its own. */
  enum Claim {
    /** Some stock is beyond the margin from another. */
    MATTERS("matters"),
    /** Some stocks, or all, lie less than the margin apart. */
    EQUAL("equal"),
    /** Some stocks differ. */
    DIFFER("differ"),
    /** Swaps go both ways on single cultivars. */
    DEPENDS("depends");

    final String word;

    Claim(String word) {
      this.word = word;
    }
  }

  /**
   * One kind.
   *
   * @param kind the kind
   * @param trials what came of each
   */
  record Row(StudyKind kind, List<StudyTrial> trials) {

    int count(Predicate<StudyTrial> wanted) {
      return (int) trials.stream().filter(wanted).count();
    }

    int verdict(String name) {
      return count(t -> t.verdict().equals(name));
    }

    int errors() {
      return count(t -> !wrong(kind, t).isEmpty());
    }

    int errors(Claim claim) {
      return count(t -> wrong(kind, t).contains(claim));
    }

    /** Trials that say of some stocks, or of all, that they make no practical difference. */
    int equalsNamed() {
      return count(t -> !t.equivalent().isEmpty());
    }

    /** Trials that say that some stocks differ, by whatever much. */
    int differ() {
      return count(t -> t.verdict().equals("MATTERS") || DIFFER.contains(t.verdict()));
    }

    Interval likely() {
      return TakeRateInterval.clopperPearson(errors(), trials.size(), 0.95);
    }

    double coverage() {
      int all = trials.stream().mapToInt(StudyTrial::ranges).sum();
      return all == 0
          ? Double.NaN
          : trials.stream().mapToInt(StudyTrial::inside).sum() / (double) all;
    }
  }

  private StudySummary() {}

  /** What a trial says that isn't so. */
  static Set<Claim> wrong(StudyKind kind, StudyTrial trial) {
    Set<Claim> wrong = EnumSet.noneOf(Claim.class);
    boolean matters = trial.verdict().equals("MATTERS");
    if (matters && (kind.gap() <= StudyKinds.MARGIN + EXACT || trial.wronglyNamed())) {
      wrong.add(Claim.MATTERS);
    }
    if ((matters || DIFFER.contains(trial.verdict())) && kind.gap() == 0) {
      wrong.add(Claim.DIFFER);
    }
    boolean overlooked =
        trial.verdict().equals("NO_PRACTICAL_DIFFERENCE") && kind.name().startsWith("opposite");
    if (trial.wronglyEquivalent() || overlooked) {
      wrong.add(Claim.EQUAL);
    }
    if (trial.wronglyDepends()) {
      wrong.add(Claim.DEPENDS);
    }
    return wrong;
  }

  static List<Row> read(List<String> lines) {
    Map<String, List<StudyTrial>> byKind =
        lines.stream().map(StudyTrial::read).collect(Collectors.groupingBy(StudyTrial::kind));
    return StudyKinds.all().stream()
        .filter(kind -> byKind.containsKey(kind.name()))
        .map(kind -> new Row(kind, byKind.get(kind.name())))
        .sorted(Comparator.comparingDouble(r -> -r.errors() / (double) r.trials().size()))
        .toList();
  }

  /** Prints the table of a results file. */
  public static void main(String[] arguments) throws IOException {
    System.out.printf(
        Locale.ROOT,
        "%-22s %5s %5s %5s %5s | %4s %4s %4s %4s %4s %4s %4s | %5s %5s %5s%n",
        "kind",
        "n",
        "wrong",
        "%",
        "up%",
        "matt",
        "diff",
        "less",
        "none",
        "dep",
        "cant",
        "tied",
        "cov94",
        "set",
        "ms");
    for (Row r : read(Files.readAllLines(Path.of(arguments[0])))) {
      int n = r.trials().size();
      System.out.printf(
          Locale.ROOT,
          "%-22s %5d %5d %5.1f %5.1f | %4d %4d %4d %4d %4d %4d %4d | %5.1f %5d %5.0f%n",
          r.kind().name(),
          n,
          r.errors(),
          100.0 * r.errors() / n,
          100 * r.likely().high(),
          r.verdict("MATTERS"),
          r.verdict("DIFFERS_UNSETTLED"),
          r.verdict("LESS_THAN_YOU_CARE_ABOUT"),
          r.verdict("NO_PRACTICAL_DIFFERENCE"),
          r.verdict("DEPENDS_ON_CULTIVAR"),
          r.verdict("CANT_TELL_YET"),
          r.verdict("ENTANGLED"),
          100 * r.coverage(),
          r.equalsNamed(),
          r.trials().stream().mapToLong(StudyTrial::millis).average().orElse(0));
    }
  }
}
