/** Damaged and hostile files for every reader. */
package org.taketally.fuzz;
