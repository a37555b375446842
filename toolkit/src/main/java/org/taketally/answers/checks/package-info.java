/**
 * Whether the model fits the records. Start at {@link
 * org.taketally.answers.checks.FitChecksCalculator}.
 */
package org.taketally.answers.checks;
