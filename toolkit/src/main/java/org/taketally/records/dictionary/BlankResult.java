package org.taketally.records.dictionary;

/** What a blank result means on a sheet: only the person who kept it knows. */
public enum BlankResult {
  /** Nobody looked, or nobody wrote it down: neither taken nor failed. */
  UNASSESSED,
  /** Only takes were written down: a blank is a failure. */
  FAILED,
  /** Only failures were written down: a blank is a take. */
  TAKEN
}
