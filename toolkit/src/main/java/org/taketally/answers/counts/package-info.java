/**
 * What can be checked by hand from counts alone: intervals for a take rate and for differences,
 * equivalence, stratified tables, survival of takes, and the number of grafts a comparison needs.
 * Closed forms and small searches; reads no files and fits no mixed model. Start at {@link
 * org.taketally.answers.counts.TakeRateInterval} or {@link
 * org.taketally.answers.counts.StratifiedTable}.
 */
package org.taketally.answers.counts;
