/**
 * What comes out of a cell: text, values in several forms, errors in words, and questions to the
 * user. Uses {@code engine.source} only.
 */
package org.taketally.notebook.kernel.engine.output;
