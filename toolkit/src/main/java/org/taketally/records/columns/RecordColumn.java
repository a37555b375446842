package org.taketally.records.columns;

import java.util.List;
import java.util.Optional;

/**
 * The columns of a sheet of graft records, one row a graft or a batch of like grafts.
 *
 * <p>The order of {@link #allowed()} is the order of levels everywhere else: the first is the base
 * others are compared with.
 */
public enum RecordColumn {
  /** Label of the graft or batch. */
  RECORD(text("label of the graft or batch, one of a kind within a season")),
  /** Season. */
  SEASON(levels("season; taken from graft_date where not given")),
  /** Site. */
  SITE(levels("nursery, garden or orchard where the grafts stand")),
  /** Block. */
  BLOCK(levels("bench, bed, row or block within the site")),
  /** Grafter. */
  GRAFTER(levels("who cut and tied; a code will do")),
  /** Cultivar. */
  CULTIVAR(levels("name of the cultivar on top").isNeeded()),
  /** Rootstock. */
  ROOTSTOCK(levels("name of the rootstock below").isNeeded()),
  /** Interstock. */
  INTERSTOCK(levels("piece between rootstock and cultivar, if any")),
  /** Method. */
  METHOD(
      levels("how the graft was made; other names are kept as they are")
          .suggesting(
              "cleft",
              "side-veneer",
              "whip-and-tongue",
              "chip-bud",
              "whip",
              "splice",
              "saddle",
              "omega",
              "side",
              "bark",
              "inlay-bark",
              "approach",
              "four-flap",
              "epicotyl",
              "softwood",
              "tip",
              "t-bud",
              "inverted-t-bud",
              "patch-bud",
              "micrograft",
              "other")),
  /** Day the graft was made. */
  GRAFT_DATE(date("day the graft was made")),
  /** Day the budwood was cut. */
  BUDWOOD_CUT_DATE(date("day the budwood was cut from its tree")),
  /** Storage temperature. */
  STORAGE_TEMP_C(number("temperature the budwood was kept at", "°C", -40, 50)),
  /** How the budwood was kept. */
  BUDWOOD_KEPT(levels("how the budwood was kept").only("moist", "dry")),
  /** Bud stage. */
  BUD_STAGE(levels("state of the buds when grafted").only("dormant", "swelling", "flushed")),
  /** Scion diameter. */
  SCION_DIAMETER_MM(number("thickness of the scion at the cut", "mm", 0.5, 150)),
  /** Stock diameter. */
  STOCK_DIAMETER_MM(number("thickness of the rootstock at the cut", "mm", 0.5, 500)),
  /** Stock condition. */
  STOCK_CONDITION(levels("how the rootstock looked when grafted").only("healthy", "weak")),
  /** How the growing layers met. */
  CAMBIUM_MATCH(
      levels("where the growing layers under the bark were made to meet")
          .only("both-sides", "one-side", "centred")),
  /** Tool cleaning. */
  TOOL_CLEANING(
      levels("how blades were cleaned; other names are kept as they are")
          .suggesting("alcohol", "bleach", "flame", "soap", "none")),
  /** Day the takes were counted. */
  ASSESSED_DATE(date("day the takes were counted")),
  /** Grafts made. */
  GRAFTS(count("grafts in this row; 1 where no row of the sheet gives more", 1)),
  /** Grafts alive. */
  TAKES(count("grafts alive on assessed_date, 0 to grafts; or give outcome", 0)),
  /** Outcome of a single graft. */
  OUTCOME(levels("result of a single graft; or give takes").only("failed", "taken", "unassessed")),
  /** Why it failed. */
  FAILURE_CAUSE(
      levels("why the graft failed, as far as seen; other names are kept as they are")
          .suggesting(
              "dried-scion",
              "rot",
              "no-callus",
              "stalled",
              "flooded",
              "broken",
              "stock-died",
              "pest",
              "frost",
              "heat",
              "girdled",
              "outgrown",
              "lost-label",
              "discarded",
              "unknown")),
  /** The earlier record this one replaces. */
  REPLACES(text("record of the failed graft this one was made in place of")),
  /** Notes. */
  NOTES(text("anything else"));

  @SuppressWarnings("ImmutableEnumChecker") // its one list is made by List.of
  private final ColumnRule rule;

  RecordColumn(ColumnRule rule) {
    this.rule = rule.named(name().toLowerCase(java.util.Locale.ROOT));
  }

  ColumnRule rule() {
    return rule;
  }

  /**
   * The name as it stands in the header, lower case.
   *
   * @return e.g. {@code graft_date}
   */
  public String columnName() {
    return rule.name();
  }

  /**
   * What kind of value it holds.
   *
   * @return the kind
   */
  public ColumnKind kind() {
    return rule.kind();
  }

  /**
   * Unit of a number.
   *
   * @return e.g. {@code mm}; empty where there is none
   */
  public String unit() {
    return rule.unit();
  }

  /**
   * Level names in order, the base first.
   *
   * @return empty where any name will do
   */
  public List<String> allowed() {
    return rule.allowed();
  }

  /**
   * Whether names other than {@link #allowed()} are refused.
   *
   * @return true for a closed list
   */
  public boolean closed() {
    return rule.closed();
  }

  /**
   * Smallest value a number may have.
   *
   * @return in {@link #unit()}
   */
  public double lowest() {
    return rule.lowest();
  }

  /**
   * Largest value a number may have.
   *
   * @return in {@link #unit()}
   */
  public double highest() {
    return rule.highest();
  }

  /**
   * Whether every sheet must have it. Beside these, one of {@link #TAKES} and {@link #OUTCOME} is
   * needed.
   *
   * @return true for cultivar and rootstock
   */
  public boolean needed() {
    return rule.needed();
  }

  /**
   * What it means, in a few words.
   *
   * @return a phrase without a full stop
   */
  public String meaning() {
    return rule.meaning();
  }

  /**
   * The column of a name.
   *
   * @param name as in a header, exactly
   * @return the column, if it is one of these
   */
  public static Optional<RecordColumn> named(String name) {
    for (RecordColumn column : values()) {
      if (column.columnName().equals(name)) {
        return Optional.of(column);
      }
    }
    return Optional.empty();
  }

  private static ColumnRule text(String meaning) {
    return ColumnRule.of("", ColumnKind.TEXT, meaning);
  }

  private static ColumnRule levels(String meaning) {
    return ColumnRule.of("", ColumnKind.LEVELS, meaning);
  }

  private static ColumnRule date(String meaning) {
    return ColumnRule.of("", ColumnKind.DATE, meaning);
  }

  private static ColumnRule number(String meaning, String unit, double lowest, double highest) {
    return ColumnRule.of("", ColumnKind.NUMBER, meaning).within(unit, lowest, highest);
  }

  private static ColumnRule count(String meaning, int lowest) {
    return ColumnRule.of("", ColumnKind.COUNT, meaning).within("grafts", lowest, Integer.MAX_VALUE);
  }
}
