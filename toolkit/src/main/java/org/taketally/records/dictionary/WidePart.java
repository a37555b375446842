package org.taketally.records.dictionary;

import java.util.Map;

/**
 * One of the long rows that a row of a wide sheet holds side by side.
 *
 * @param set our column to the value this part has in all rows, e.g. season to 2024
 * @param columns our column to the heading that holds its value for this part
 */
public record WidePart(Map<String, String> set, Map<String, String> columns) {}
