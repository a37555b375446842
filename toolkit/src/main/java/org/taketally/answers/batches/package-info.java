/**
 * Whether one batch, day, bed or hand stands apart from the others, and what else it shares. Start
 * at {@link org.taketally.answers.batches.LevelAgainstOthersCalculator#of}.
 */
package org.taketally.answers.batches;
