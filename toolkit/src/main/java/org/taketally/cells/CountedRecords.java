package org.taketally.cells;

import org.taketally.records.RecordsCheck;

/**
 * Cells made from files without holding their rows, and what reading brought to light.
 *
 * @param cells grafts and takes per pattern
 * @param check problems and counts of rows, columns, seasons and sites
 */
public record CountedRecords(Cells cells, RecordsCheck check) {}
