/**
 * What to do differently next season, as values: each piece of advice with its gain, how sure its
 * direction is and from how many grafts. Start at {@link
 * org.taketally.answers.advice.SeasonAdviceCalculator#of}. Says nothing in words.
 */
package org.taketally.answers.advice;
