package org.taketally.app;

import java.util.List;
import org.taketally.terms.Problem;

/** A list with lines that can't be used: it is answered whole or not at all. */
final class UnusableList extends RuntimeException {
  private static final long serialVersionUID = 1;

  private UnusableList(String message) {
    super(message);
  }

  static void require(String what, List<Problem> problems) {
    if (!problems.isEmpty()) {
      throw new UnusableList(
          "%s can't be used as it is:\n  %s"
              .formatted(
                  what, String.join("\n  ", problems.stream().map(Problem::sentence).toList())));
    }
  }
}
