/**
 * Working pages in words: those for whoever works with the records, in English. Values in,
 * sentences and cells of tables out.
 */
package org.taketally.wording.pages;
