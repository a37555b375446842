package org.taketally.wording.opendata;

import org.taketally.records.columns.RecordColumn;

/**
 * The headings of MIAPPE 1.2, and what stands below them in words.
 *
 * @see <a href="https://github.com/MIAPPE/MIAPPE">MIAPPE checklist and data model</a>
 */
public final class MiappeWords {

  /** The version the headings are from. */
  public static final String VERSION = "1.2";

  /** Stands where nobody said. */
  public static final String UNREPORTED = "Unreported";

  /** A season at a site. */
  public static final TableWords STUDY =
      TableWords.of(
          "Studies: a season at a site (MIAPPE 1.2)",
          "Investigation title",
          "what the data are",
          "License",
          "terms of passing them on, SPDX identifier",
          "MIAPPE version",
          "of the checklist these headings are from",
          "Study unique ID",
          "package, season and site",
          "Study title",
          "season and site in words",
          "Start date of study",
          "first day of grafting",
          "End date of study",
          "last day of counting, or of grafting",
          "Contact institution",
          "who answers for the records",
          "Geographic location (country)",
          "two letters of ISO 3166, if given",
          "Experimental site name",
          "site as in records.csv",
          "Description of the experimental design",
          "as far as it is known",
          "Observation unit level hierarchy",
          "how rows are nested",
          "Observation unit description",
          "what a row is",
          "Description of growth facility",
          "where the grafts stood",
          "season",
          "season as in records.csv");

  /** Scions and stocks. */
  public static final TableWords MATERIAL =
      TableWords.of(
          "Scions and stocks (MIAPPE 1.2)",
          "Biological material ID",
          "role and name",
          "Organism",
          "species, as far as it was said",
          "Infraspecific name",
          "cultivar or type of stock",
          "Material source accession name",
          "name as in records.csv",
          "role",
          "scion, rootstock or interstock",
          "grafts",
          "grafts it had a part in");

  /** What was observed. */
  public static final TableWords VARIABLES =
      TableWords.of(
          "What was observed (MIAPPE 1.2)",
          "Variable ID",
          "column of records.csv",
          "Variable name",
          "in words",
          "Trait",
          "what was looked at",
          "Method",
          "how",
          "Scale",
          "unit or list of values",
          "Time scale",
          "when");

  private MiappeWords() {}

  /**
   * A season at a site.
   *
   * @param season empty if the records don't say
   * @param site empty if the records don't say
   * @return a title
   */
  public static String studyTitle(String season, String site) {
    return "Grafts"
        + (season.isEmpty() ? "" : " of " + season)
        + (site.isEmpty() ? "" : ", " + site);
  }

  /**
   * What is known of the layout.
   *
   * @return a few words
   */
  public static String design() {
    return "unknown: records of grafts as made; a layout is not part of them";
  }

  /**
   * What a row of the records is.
   *
   * @return a few words
   */
  public static String unit() {
    return "a graft, or a batch of like grafts (grafts), with how many were alive (takes)";
  }

  /**
   * What was looked at.
   *
   * @param column an observed one
   * @return a few words
   */
  public static String trait(RecordColumn column) {
    return isResult(column) ? "graft alive" : column.meaning();
  }

  /**
   * How it was looked at.
   *
   * @param column an observed one
   * @return a few words
   */
  public static String method(RecordColumn column) {
    return column == RecordColumn.GRAFTS ? "counted when made" : "seen by eye";
  }

  /**
   * Whether a column holds how grafts came out.
   *
   * @param column any
   * @return true for takes and outcome
   */
  public static boolean isResult(RecordColumn column) {
    return column == RecordColumn.TAKES || column == RecordColumn.OUTCOME;
  }
}
