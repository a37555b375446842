package org.taketally.wording.figures;

/** What several figures say, in English. */
public final class FigureWords {

  /** The key's word for an estimate. */
  public static final String ADJUSTED = "adjusted take";

  /** The key's word for a bar. */
  public static final String LIKELY = "likely range";

  /** The key's word for a counted take. */
  public static final String COUNTED = "as counted, nothing adjusted";

  /** Heading of counts of grafts. */
  public static final String GRAFTS = "grafts";

  /** An axis of takes. */
  public static final String IN_100 = "grafts that take, in 100";

  private FigureWords() {}
}
