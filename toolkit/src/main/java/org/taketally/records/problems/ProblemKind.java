package org.taketally.records.problems;

import static org.taketally.terms.Severity.CHECK;
import static org.taketally.terms.Severity.ERROR;
import static org.taketally.terms.Severity.NOTE;

import org.taketally.terms.Severity;

/** What can be wrong with records, or worth a look. */
public enum ProblemKind {
  /** More or fewer fields than headings. */
  RAGGED_ROW(ERROR, "rows that don't fit the headings"),
  /** A needed value is blank. */
  NEEDED_BLANK(ERROR, "needed values left blank"),
  /** A formula of the spreadsheet failed. */
  SPREADSHEET_ERROR(ERROR, "failed formulas"),
  /** A word outside a closed list. */
  NOT_ALLOWED(ERROR, "words that aren't on the list"),
  /** Not a number. */
  NOT_A_NUMBER(ERROR, "numbers that can't be read"),
  /** A mark for the name above. */
  DITTO_MARK(ERROR, "ditto marks where a name belongs"),
  /** A number that could be read two ways. */
  AMBIGUOUS_NUMBER(ERROR, "numbers that could be read two ways"),
  /** A number that can't be true. */
  OUT_OF_RANGE(ERROR, "numbers out of range"),
  /** A count with a fraction. */
  FRACTIONAL_COUNT(ERROR, "counts that aren't whole"),
  /** A percentage where a count belongs. */
  PERCENT_FOR_COUNT(ERROR, "percentages where a count belongs"),
  /** Not a date. */
  NOT_A_DATE(ERROR, "dates that can't be read"),
  /** A date that could be read two ways. */
  AMBIGUOUS_DATE(ERROR, "dates that could be read two ways"),
  /** A date in a pattern nobody named. */
  UNDECLARED_DATE(ERROR, "dates in a pattern nobody named"),
  /** More takes than grafts. */
  TAKES_ABOVE_GRAFTS(ERROR, "rows with more takes than grafts"),
  /** Two columns of a row contradict each other. */
  CONTRADICTION(ERROR, "rows that contradict themselves"),
  /** Cut after grafting, or assessed before. */
  DATES_OUT_OF_ORDER(ERROR, "dates out of order"),
  /** A day that hasn't come yet. */
  FUTURE_DATE(ERROR, "dates in the future"),
  /** The same record a second time. */
  DUPLICATE_RECORD(ERROR, "records read a second time"),
  /** A row of totals. */
  SUMMARY_ROW(ERROR, "rows of totals among the records"),
  /** A remark in a row of its own. */
  REMARK_ROW(ERROR, "remarks or names alone in their rows"),
  /** The headings a second time. */
  HEADINGS_AGAIN(ERROR, "lines of headings among the records"),
  /** A record that isn't among those read. */
  UNKNOWN_RECORD(ERROR, "counts of records that weren't read"),

  /** Names nearly alike. */
  SIMILAR_NAMES(CHECK, "names nearly alike"),
  /** One name in two spellings. */
  SPELT_TWO_WAYS(CHECK, "names spelt two ways"),
  /** A name that often means not recorded. */
  LOOKS_MISSING(CHECK, "names that often mean \"not recorded\""),
  /** Budwood colder than the crop bears. */
  STORED_TOO_COLD(CHECK, "rows of budwood kept too cold"),
  /** Budwood warmer than is good. */
  STORED_TOO_WARM(CHECK, "rows of budwood kept too warm"),
  /** Budwood too old. */
  STORED_TOO_LONG(CHECK, "rows of budwood kept too long"),
  /** Counted before a take can be told. */
  ASSESSED_EARLY(CHECK, "rows assessed too early to tell"),
  /** More grafts than one row can hold. */
  LARGE_BATCH(CHECK, "very large batches"),
  /** A row without a result. */
  NO_RESULT(CHECK, "rows without a result"),
  /** Many results are blank and nobody said what that means. */
  BLANK_RESULTS(CHECK, "sheets with many blank results"),

  /** The record it replaces isn't there. */
  REPLACES_NOTHING(CHECK, "replaced records that aren't there"),
  /** The record it replaces was grafted later. */
  REPLACES_LATER(CHECK, "grafts made before those they replace"),
  /** More grafts replaced than failed. */
  REPLACES_TAKEN(CHECK, "grafts in place of more than failed"),
  /** A graft date far from its season. */
  SEASON_AND_DATE(CHECK, "graft dates far from their season"),
  /** A day from before people kept such sheets. */
  LONG_AGO(CHECK, "dates before 1970"),
  /** Days with day and month the other way round than the rest. */
  DAYS_OF_TWO_ORDERS(CHECK, "columns of days written two ways"),

  /** Grafts, living and dead that don't add up. */
  DEAD_DISAGREE(CHECK, "rows whose living and dead don't come to their grafts"),
  /** A cause of failure beside a take. */
  CAUSE_OF_TAKE(CHECK, "causes of failure beside a take"),
  /** A graft planned, not made. */
  PLANNED(CHECK, "graft dates in the future"),
  /** A batch row entered twice, it seems. */
  SAME_ROW_TWICE(CHECK, "batches entered twice, it seems"),
  /** The same file or worksheet twice. */
  SAME_FILE_TWICE(CHECK, "files or worksheets with the same contents"),
  /** A batch row that sums up single grafts. */
  LOOKS_LIKE_SUMMARY(CHECK, "batches that sum up single grafts, it seems"),
  /** Takes that look like percentages. */
  LOOKS_LIKE_PERCENT(CHECK, "columns of takes that look like percentages"),
  /** All or none of many grafts took. */
  ALL_OR_NONE(CHECK, "pairings where all or none of many grafts took"),
  /** A take rate no one expects of the crop. */
  UNUSUAL_TAKE(CHECK, "unusual take rates"),
  /** Results more alike than chance allows. */
  TOO_ALIKE(CHECK, "results more alike than chance allows"),
  /** Early and late counts mixed. */
  MIXED_ASSESSMENT(CHECK, "early and late counts mixed"),
  /** More alive than the time before. */
  ALIVE_AGAIN(CHECK, "counts higher than the time before"),
  /** The last count and the record disagree. */
  COUNTS_DISAGREE(CHECK, "counts that disagree with the record"),
  /** A worksheet that doesn't hold records. */
  SHEET_LEFT_OUT(CHECK, "sheets left out"),

  /** The dictionary names a column that isn't there. */
  DICTIONARY_UNUSED(CHECK, "columns of the dictionary that no file has"),

  /** A word in other case or spacing. */
  RESPELLED(NOTE, "words read in spite of their spelling"),
  /** A heading in other case or spacing. */
  HEADING_RESPELLED(NOTE, "headings read in spite of their spelling"),
  /** A column that isn't one of ours. */
  OTHER_COLUMN(NOTE, "columns of your own"),
  /** Season taken from the graft date. */
  SEASON_FROM_DATE(NOTE, "seasons taken from the graft date"),
  /** A time of day left out. */
  TIME_DROPPED(NOTE, "times of day left out"),
  /** Budwood older than is best. */
  STORED_LONG(NOTE, "rows of budwood kept longer than is best"),
  /** So many names that the last weren't compared. */
  NAMES_NOT_COMPARED(NOTE, "columns with too many names to compare all"),
  /** A file of the dictionary that wasn't read. */
  DICTIONARY_FILE(NOTE, "files of the dictionary that weren't read"),

  /** A worksheet that wasn't named, where others were. */
  SHEET_NOT_NAMED(NOTE, "worksheets that weren't named"),

  /** No crop named, so that its limits aren't checked. */
  NO_CROP(NOTE, "limits not checked"),

  /** A blank result, read as a failure as the dictionary says. */
  BLANK_AS_FAILED(NOTE, "blank results read as failures"),
  BLANK_AS_TAKEN(NOTE, "blank results read as takes"),

  /** Grafts without a known result. */
  UNASSESSED(NOTE, "rows without a known result");

  private final Severity severity;
  private final String plural;

  ProblemKind(Severity severity, String plural) {
    this.severity = severity;
    this.plural = plural;
  }

  /**
   * How grave it is.
   *
   * @return error: the row is set aside; check: a person should look; note: for information
   */
  public Severity severity() {
    return severity;
  }

  /**
   * Many of them, in words.
   *
   * @return e.g. {@code dates that could be read two ways}
   */
  public String plural() {
    return plural;
  }
}
