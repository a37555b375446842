package org.taketally.wording.opendata;

/**
 * A column of a table that goes out.
 *
 * @param name its heading
 * @param meaning what stands in it
 */
public record Heading(String name, String meaning) {}
