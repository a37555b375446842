package org.taketally.records.dictionary;

import java.util.Map;

/**
 * Days that different people write in different ways.
 *
 * @param column heading, or column of ours, that says who wrote the row
 * @param patterns what stands there to the pattern of that person's days
 */
public record DatesBy(String column, Map<String, String> patterns) {}
