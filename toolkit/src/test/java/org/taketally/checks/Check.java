package org.taketally.checks;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * How one published answer is checked. Our numbers must agree with the printed ones to the printed
 * digits, and with the reference program's, unless a row says otherwise and why.
 */
final class Check {

  /** Computes our numbers, in the order in which the answer prints them. */
  @FunctionalInterface
  interface Numbers {
    double[] compute();
  }

  /** Computes our answer in words. */
  @FunctionalInterface
  interface Words {
    String compute();
  }

  private final PublishedAnswer answer;
  private final StringBuilder remark = new StringBuilder();
  private Numbers numbers;
  private Words words;
  private String published;
  private String reference;
  private boolean isCorrected;
  private double[] publishedTolerances = {};
  private double[] referenceTolerances = {};

  Check(PublishedAnswer answer) {
    this.answer = answer;
    this.published = answer.published();
    this.reference = answer.reference();
  }

  /** Our numbers: as many as the published text prints, leading ones of the reference's. */
  Check ours(Numbers ourNumbers) {
    this.numbers = ourNumbers;
    return this;
  }

  /** Our answer in words, to equal the published text. */
  Check oursInWords(Words ourWords) {
    this.words = ourWords;
    return this;
  }

  /** A misprint, or an answer printed another way: compare with this text instead. */
  Check readAs(String text, String reason) {
    this.published = text;
    this.isCorrected = true;
    return remark("compared with " + text + ": " + reason);
  }

  /** The published value is rougher than its digits, e.g. a Monte Carlo mean. */
  Check within(double tolerance, String reason) {
    this.publishedTolerances = new double[] {tolerance};
    return remark("within " + tolerance + ": " + reason);
  }

  /** The reference, read another way than its leading numbers. */
  Check referenceReadAs(String text) {
    this.reference = text;
    return this;
  }

  /** The reference is rougher than its digits. */
  Check referenceWithin(double tolerance, String reason) {
    this.referenceTolerances = new double[] {tolerance};
    return remark("other program within " + tolerance + ": " + reason);
  }

  /** The same with a tolerance for each number. */
  Check referenceWithin(String reason, double... tolerances) {
    this.referenceTolerances = tolerances;
    return remark("other program: " + reason);
  }

  /** There is no reference, or it is not comparable. */
  Check withoutReference(String reason) {
    this.reference = "";
    return remark(reason);
  }

  /** Taketally does not compute this, and why. */
  Check notOffered(String reason) {
    return remark("not offered: " + reason);
  }

  Check remark(String text) {
    remark.append(remark.isEmpty() ? "" : "; ").append(text);
    return this;
  }

  PublishedAnswer answer() {
    return answer;
  }

  /** Whether the published value was found wrong, or not to follow from the data as they are. */
  boolean isCorrected() {
    return isCorrected;
  }

  /** Whether the value is rougher than its digits, so that a wider limit is given. */
  boolean isLoosened() {
    return publishedTolerances.length > 0
        || (published.isBlank() && referenceTolerances.length > 0);
  }

  boolean isComputed() {
    return numbers != null || words != null;
  }

  String remark() {
    return remark.toString();
  }

  /** Runs the computation and compares. */
  Outcome run() {
    if (words != null) {
      String ours = words.compute();
      return new Outcome(
          ours, ours.equals(published) ? List.of() : List.of("ours in words: " + ours));
    }
    double[] ours = numbers.compute();
    List<Printed> printed = Printed.numbers(published);
    List<Printed> other = Printed.numbers(reference);
    List<String> faults = new ArrayList<>();
    if (!published.isBlank()) {
      requireCount("published", ours.length == printed.size(), ours, published);
      faults.addAll(faults("published", ours, printed, publishedTolerances));
    }
    if (!reference.isBlank()) {
      requireCount("reference", ours.length <= other.size(), ours, reference);
      faults.addAll(faults("reference", ours, other, referenceTolerances));
    }
    if (published.isBlank() && reference.isBlank()) {
      faults.add("nothing to compare with");
    }
    return new Outcome(text(ours, printed, other), faults);
  }

  private void requireCount(String what, boolean enough, double[] ours, String text) {
    if (!enough) {
      throw new IllegalStateException(
          "%s: we give %d numbers, the %s text is \"%s\"; use readAs or referenceReadAs"
              .formatted(answer.key(), ours.length, what, text));
    }
  }

  private static List<String> faults(
      String what, double[] ours, List<Printed> theirs, double[] tolerances) {
    return IntStream.range(0, ours.length)
        .filter(
            i -> {
              double allowed = allowed(tolerances, i, theirs.get(i));
              return !(Math.abs(ours[i] - theirs.get(i).value()) <= allowed);
            })
        .mapToObj(
            i -> "%s number %d: %s, ours %s".formatted(what, i + 1, theirs.get(i).value(), ours[i]))
        .toList();
  }

  private static double allowed(double[] tolerances, int i, Printed theirs) {
    return switch (tolerances.length) {
      case 0 -> theirs.tolerance();
      case 1 -> tolerances[0];
      default -> tolerances[i];
    };
  }

  /** Ours with the decimals of the more exactly printed of the two, at most ten. */
  private static String text(double[] ours, List<Printed> printed, List<Printed> other) {
    return IntStream.range(0, ours.length)
        .mapToObj(i -> Printed.text(ours[i], Math.max(decimals(printed, i), decimals(other, i))))
        .collect(Collectors.joining(", "));
  }

  private static int decimals(List<Printed> printed, int i) {
    return i < printed.size() ? Math.min(10, printed.get(i).decimals()) : 0;
  }

  /**
   * What a check gave.
   *
   * @param ours our value, as printed in the table
   * @param faults disagreements; none if all is well
   */
  record Outcome(String ours, List<String> faults) {}
}
