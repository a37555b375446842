/**
 * Does it matter: the rules that turn evidence into a verdict, and what the records could have
 * shown. Start at {@link org.taketally.answers.verdict.RootstockVerdictCalculator}.
 */
package org.taketally.answers.verdict;
