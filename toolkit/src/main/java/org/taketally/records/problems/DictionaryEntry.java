package org.taketally.records.problems;

import com.google.gson.JsonPrimitive;

/** Entries of a dictionary as a remedy prints them: JSON that can be copied, whatever the names. */
public final class DictionaryEntry {

  private DictionaryEntry() {}

  /** A name in quotation marks; those within it, and backslashes, escaped. */
  public static String quoted(String name) {
    return new JsonPrimitive(name).toString();
  }

  /**
   * A name and another spelling of it.
   *
   * @return e.g. {@code "same": {"Corvane": ["Corv."]}}
   */
  public static String same(String name, String spelling) {
    return "\"same\": {%s: [%s]}".formatted(quoted(name), quoted(spelling));
  }
}
