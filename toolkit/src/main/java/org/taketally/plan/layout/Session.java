package org.taketally.plan.layout;

/**
 * One hand on one day: the block within which grafts are compared.
 *
 * @param grafter who grafts; never blank
 * @param day a date, or a name for a day yet to be fixed, e.g. {@code day 1}; never blank
 */
public record Session(String grafter, String day) {

  public Session {
    if (grafter.isBlank() || day.isBlank()) {
      throw new IllegalArgumentException(
          "a session needs a grafter and a day, got \"%s\" and \"%s\"".formatted(grafter, day));
    }
  }
}
