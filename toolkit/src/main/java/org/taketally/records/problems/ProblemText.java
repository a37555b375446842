package org.taketally.records.problems;

/**
 * The words of a problem.
 *
 * @param found what stands there, as typed
 * @param expected what would have been right
 * @param remedy what the person can do
 */
public record ProblemText(String found, String expected, String remedy) {}
