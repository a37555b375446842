/**
 * The season page for members in words: values in, sentences and cells of tables out, in any {@link
 * org.taketally.wording.language.Language}. Start at {@link
 * org.taketally.wording.season.SeasonWords}. Decides neither what is shown nor where.
 */
package org.taketally.wording.season;
