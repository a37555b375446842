/**
 * Says answers in plain words: start at {@link org.taketally.wording.Wording}. Sentences,
 * headlines, captions and headings of tables, names of columns and the JSON of an analysis are made
 * here and nowhere else. Computes nothing.
 */
package org.taketally.wording;
