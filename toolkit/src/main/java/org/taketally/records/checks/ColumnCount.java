package org.taketally.records.checks;

import org.taketally.records.columns.ColumnKind;

/**
 * How far a column is filled in.
 *
 * @param name its name
 * @param kind what it holds
 * @param own whether it is a column of the user's own, not one of ours
 * @param recorded kept rows with a value
 * @param missing kept rows without
 * @param levels distinct names, or 0 where it doesn't hold names
 */
public record ColumnCount(
    String name, ColumnKind kind, boolean own, long recorded, long missing, int levels) {}
