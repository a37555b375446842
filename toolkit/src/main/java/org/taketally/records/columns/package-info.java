/**
 * What we know: the columns of a sheet, their kinds, units and allowed words, and how alike two
 * names are. Start at {@link RecordColumn}. Reads nothing.
 */
package org.taketally.records.columns;
