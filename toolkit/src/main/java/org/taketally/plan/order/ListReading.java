package org.taketally.plan.order;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * How the headings of an order book or a list of requests were read, as far as they don't say it
 * themselves.
 *
 * @param meant headings that were read by what their words mean, and the column each was read as
 * @param notRead headings of columns that weren't read
 */
public record ListReading(Map<String, String> meant, List<String> notRead) {

  public ListReading {
    meant = Collections.unmodifiableMap(new LinkedHashMap<>(meant));
    notRead = List.copyOf(notRead);
  }
}
