/**
 * Reads Java text: pieces of a cell, names in it, its comments, where an error stands. Runs
 * nothing.
 */
package org.taketally.notebook.kernel.engine.source;
