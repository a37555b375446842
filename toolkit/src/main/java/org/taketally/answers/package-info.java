/**
 * What a fit means, as values: numbers, enums and names of levels, never a sentence. A record
 * {@code X} is an answer; {@code XCalculator} beside it works it out and is never called back. Here
 * stands what all answers share; each kind has a room of its own below.
 */
package org.taketally.answers;
