package org.taketally.model;

/**
 * A test of whether levels differ.
 *
 * @param chiSquare statistic, 0 or more
 * @param degrees degrees of freedom, 1 or more
 * @param pValue how often levels that don't differ would give as much, 0 to 1
 */
public record LevelTest(double chiSquare, int degrees, double pValue) {}
