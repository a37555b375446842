/**
 * Phrases of the season page, its handout and their figures, one file of texts for each language.
 * Start at {@link org.taketally.wording.language.Phrases#in}. Knows no answers.
 */
package org.taketally.wording.language;
