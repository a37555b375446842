/**
 * Whether levels were compared at all: what was used within the same cultivars, hands and seasons,
 * and how much of the information is left. Start at {@link
 * org.taketally.answers.confounding.ConfoundingCalculator}.
 */
package org.taketally.answers.confounding;
