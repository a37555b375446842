package org.taketally.records.dictionary;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import com.google.gson.stream.MalformedJsonException;
import java.io.EOFException;
import java.io.IOException;
import java.io.StringReader;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.taketally.records.columns.SizeLimits;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;

/** Reads one JSON object strictly: a name given twice is an error, not "the last one wins". */
final class StrictJson {

  private static final String LENIENT =
      "Use JsonReader.setStrictness(Strictness.LENIENT) to accept malformed JSON";
  private static final Pattern LINE = Pattern.compile("line (\\d+) column (\\d+)");

  private final String file;
  private final JsonReader reader;

  private StrictJson(String file, String text) {
    this.file = file;
    this.reader = new JsonReader(new StringReader(text));
    reader.setStrictness(Strictness.STRICT);
  }

  static JsonObject object(String file, String text) {
    StrictJson json = new StrictJson(file, text);
    try {
      JsonElement all = json.element();
      if (json.reader.peek() != JsonToken.END_DOCUMENT) {
        throw json.broken("more text after the last brace");
      }
      if (!all.isJsonObject()) {
        throw json.broken("no braces { } around the whole");
      }
      return all.getAsJsonObject();
    } catch (EOFException e) {
      throw json.broken("the end of the file");
    } catch (MalformedJsonException e) {
      throw json.broken(plain(e.getMessage()));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e); // a StringReader has none
    }
  }

  /** The place, without advice to programmers. */
  private static String plain(String message) {
    return message
        .replace(LENIENT, "text that isn't JSON")
        .replaceFirst("(?s)(at line \\d+ column \\d+) path .*", "$1");
  }

  private JsonElement element() throws IOException {
    return switch (reader.peek()) {
      case BEGIN_OBJECT -> members();
      case BEGIN_ARRAY -> array();
      case BOOLEAN -> new JsonPrimitive(reader.nextBoolean());
      case NUMBER -> number(reader.nextString());
      case STRING -> new JsonPrimitive(reader.nextString());
      default -> throw broken(reader.getPath() + " is null");
    };
  }

  /** A number of a size that means something: 1e99999999999 would be written out for ever. */
  private JsonPrimitive number(String text) {
    if (text.length() > SizeLimits.NUMBER || !Double.isFinite(Double.parseDouble(text))) {
      throw broken(
          "the number %s at %s"
              .formatted(text.substring(0, Math.min(20, text.length())), reader.getPath()));
    }
    return new JsonPrimitive(new java.math.BigDecimal(text));
  }

  private JsonObject members() throws IOException {
    JsonObject object = new JsonObject();
    reader.beginObject();
    while (reader.hasNext()) {
      String name = reader.nextName();
      if (object.has(name)) {
        throw broken("the name \"" + name + "\" a second time at " + reader.getPath());
      }
      object.add(name, element());
    }
    reader.endObject();
    return object;
  }

  private JsonArray array() throws IOException {
    JsonArray array = new JsonArray();
    reader.beginArray();
    while (reader.hasNext()) {
      array.add(element());
    }
    reader.endArray();
    return array;
  }

  private RecordsUnreadable broken(String found) {
    Matcher where = LINE.matcher(found + " " + reader);
    long line = where.find() ? Long.parseLong(where.group(1)) : 0;
    return new RecordsUnreadable(
        new Problem(
            Severity.ERROR,
            file,
            line,
            "",
            found.lines().findFirst().orElse(""),
            "a JSON object such as {\"dates\": \"dd/MM/yyyy\"}",
            "look for a missing quote, comma or brace at or just before this line"));
  }
}
