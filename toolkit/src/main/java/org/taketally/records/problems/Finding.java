package org.taketally.records.problems;

/**
 * What is wrong with one field.
 *
 * @param kind the kind of problem; an error leaves the field without a value
 * @param expected what would have been right
 * @param remedy what the person can do
 */
public record Finding(ProblemKind kind, String expected, String remedy) {}
