/**
 * How anything leaves the program: files written whole or not at all and never over a person's
 * work, CSV that no spreadsheet takes for formulas, lines that can't steer a terminal. Start at
 * {@link org.taketally.files.FileSet}; {@link org.taketally.files.ThisJava} is what other programs
 * are started by. Knows nothing of grafts.
 */
package org.taketally.files;
