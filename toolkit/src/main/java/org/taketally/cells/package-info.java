/**
 * Graft records as counts: grafts and takes per covariate pattern. Start at {@link
 * org.taketally.cells.Cells}. Estimates nothing.
 */
package org.taketally.cells;
