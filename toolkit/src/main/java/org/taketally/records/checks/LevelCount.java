package org.taketally.records.checks;

/**
 * Rows, grafts and takes of one season or one site.
 *
 * @param level the season or site; empty where it isn't recorded
 * @param rows kept rows
 * @param grafts grafts assessed
 * @param takes takes among them
 * @param unassessed grafts whose result isn't known
 */
public record LevelCount(String level, long rows, long grafts, long takes, long unassessed) {}
