/**
 * How the toolkit's values look in a notebook: HTML or SVG, with plain text beside. Start at {@link
 * org.taketally.notebook.display.Displays}, which has the one register. Computes nothing.
 */
package org.taketally.notebook.display;
