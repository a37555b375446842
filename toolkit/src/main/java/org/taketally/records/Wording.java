package org.taketally.records;

/**
 * The words of a problem.
 *
 * @param found what stands there, as typed
 * @param expected what would have been right
 * @param remedy what the person can do
 */
record Wording(String found, String expected, String remedy) {}
