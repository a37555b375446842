package org.taketally.checks;

/**
 * Computes our values for some published answers. To add some: implement this, and name the class
 * in {@link PublishedChecks#SOURCES}.
 */
interface CheckSource {

  /**
   * Says how each value is computed; nothing is computed yet.
   *
   * @param checks where to register, by example and quantity exactly as in answers.csv
   */
  void addTo(PublishedChecks checks);
}
