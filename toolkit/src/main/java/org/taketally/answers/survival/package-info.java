/**
 * Grafts lost over time: survival curves, rates and ratios, and late loss from repeated counts.
 * Pure counts; knows no model.
 */
package org.taketally.answers.survival;
