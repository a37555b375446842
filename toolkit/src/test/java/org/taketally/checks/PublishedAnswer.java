package org.taketally.checks;

import java.util.List;
import java.util.stream.Stream;

/**
 * One published answer, as it stands in {@code checks/answers.csv} or {@code
 * checks/plan_and_watch.csv}.
 *
 * @param example the worked example, also the name of its data file where there is one
 * @param quantity which number of the example
 * @param published the value as printed in the source; empty if the source prints none
 * @param precision how exactly it was printed, in words
 * @param reference the value another program gave for the same data; may be empty
 * @param source where the value was published
 * @param fromMemory true if the value was remembered and not read off the source
 */
record PublishedAnswer(
    String example,
    String quantity,
    String published,
    String precision,
    String reference,
    String source,
    boolean fromMemory) {

  static List<PublishedAnswer> all() {
    return Stream.concat(printed().stream(), planAndWatch().stream()).toList();
  }

  /** The rows of {@code checks/plan_and_watch.csv}: values another program gave. */
  static List<PublishedAnswer> planAndWatch() {
    return CheckData.rows("plan_and_watch.csv").stream()
        .map(
            row ->
                new PublishedAnswer(
                    row.getField("check"),
                    row.getField("quantity"),
                    "",
                    "",
                    row.getField("value"),
                    row.getField("source"),
                    false))
        .toList();
  }

  private static List<PublishedAnswer> printed() {
    return CheckData.rows("answers.csv").stream()
        .map(
            row ->
                new PublishedAnswer(
                    row.getField("example"),
                    row.getField("quantity"),
                    row.getField("published_value"),
                    row.getField("printed_precision"),
                    row.getField("r_value"),
                    row.getField("source"),
                    row.getField("from_memory").equals("yes")))
        .toList();
  }

  String key() {
    return example + " | " + quantity;
  }
}
