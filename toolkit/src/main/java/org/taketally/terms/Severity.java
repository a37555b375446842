package org.taketally.terms;

/** How grave a problem in the records is. */
public enum Severity {
  /** The row can't be used until it is repaired; it is set aside. */
  ERROR,
  /** The row is used, but a person should look. */
  CHECK,
  /** For information. */
  NOTE
}
