/**
 * How much each thing matters: cultivars, pairings, grafters, numbers along a curve, and every
 * factor on one scale. Each answer is a record; its calculator stands beside it.
 */
package org.taketally.answers.effects;
