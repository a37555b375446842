/**
 * Raw rows to typed ones, and the table they make. Start at {@link SheetReader}. Judges single
 * fields only.
 */
package org.taketally.records.rows;
