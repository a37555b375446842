package org.taketally.answers;

/**
 * An answer the records don't hold.
 *
 * @param question what was asked
 * @param reason why there is no answer, and what would give one
 */
public record Absent(String question, String reason) {}
