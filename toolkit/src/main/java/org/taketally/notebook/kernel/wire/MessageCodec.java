package org.taketally.notebook.kernel.wire;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Frames to messages and back: identities, delimiter, signature, four JSON parts.
 *
 * @see <a href="https://jupyter-client.readthedocs.io/en/stable/messaging.html">Messaging in
 *     Jupyter</a>
 */
public final class MessageCodec {

  private static final byte[] DELIMITER = "<IDS|MSG>".getBytes(StandardCharsets.US_ASCII);
  private static final int JSON_PARTS = 4;

  /** Signatures remembered; who copies a message seldom waits longer than that. */
  private static final int REMEMBERED = 1 << 16;

  private final SecretKeySpec key;

  /** Signatures of messages received, oldest first. */
  private final Set<String> seen = new LinkedHashSet<>();

  /**
   * A codec for one connection.
   *
   * @param key the connection file's key; empty means messages are unsigned
   */
  public MessageCodec(String key) {
    this.key =
        key.isEmpty()
            ? null
            : new SecretKeySpec(key.getBytes(StandardCharsets.UTF_8), "HmacSHA256");
  }

  /**
   * Frames to send.
   *
   * @param message to write
   * @return identities, delimiter, signature, header, parent, metadata, content
   */
  public List<byte[]> encode(Message message) {
    List<byte[]> parts =
        List.of(
            bytes(message.header()),
            bytes(message.parent()),
            bytes(message.metadata()),
            bytes(message.content()));
    List<byte[]> frames = new ArrayList<>(message.identities());
    frames.add(DELIMITER);
    frames.add(signature(parts).getBytes(StandardCharsets.US_ASCII));
    frames.addAll(parts);
    return frames;
  }

  /**
   * Reads and checks received frames. Extra binary frames are allowed and dropped. A signed message
   * is accepted once, so that nobody can have a cell run again by sending a copy.
   *
   * @param frames as received
   * @return the message
   * @throws MalformedMessage if a part is missing, isn't a JSON object, or the signature is wrong
   *     or was used before
   */
  public Message decode(List<byte[]> frames) throws MalformedMessage {
    int delimiter = 0;
    while (delimiter < frames.size() && !MessageDigest.isEqual(frames.get(delimiter), DELIMITER)) {
      delimiter++;
    }
    if (frames.size() < delimiter + 2 + JSON_PARTS) {
      throw new MalformedMessage(
          delimiter == frames.size() ? "no delimiter <IDS|MSG>" : "parts are missing");
    }
    List<byte[]> parts = frames.subList(delimiter + 2, delimiter + 2 + JSON_PARTS);
    checkSignature(frames.get(delimiter + 1), parts);
    JsonObject header = object("header", parts.get(0));
    if (!isText(header.get("msg_type")) || !isText(header.get("msg_id"))) {
      throw new MalformedMessage("header without msg_id or msg_type");
    }
    return new Message(
        List.copyOf(frames.subList(0, delimiter)),
        header,
        object("parent header", parts.get(1)),
        object("metadata", parts.get(2)),
        object("content", parts.get(3)));
  }

  private void checkSignature(byte[] found, List<byte[]> parts) throws MalformedMessage {
    byte[] expected = signature(parts).getBytes(StandardCharsets.US_ASCII);
    if (key != null && !MessageDigest.isEqual(found, expected)) {
      throw new MalformedMessage("wrong signature");
    }
    if (key != null && !remember(new String(found, StandardCharsets.US_ASCII))) {
      throw new MalformedMessage("a copy of a message that was sent before");
    }
  }

  private synchronized boolean remember(String signature) {
    if (seen.size() >= REMEMBERED) {
      Iterator<String> oldest = seen.iterator();
      oldest.next();
      oldest.remove();
    }
    return seen.add(signature);
  }

  private String signature(List<byte[]> parts) {
    if (key == null) {
      return "";
    }
    try {
      Mac mac = Mac.getInstance(key.getAlgorithm());
      mac.init(key);
      parts.forEach(mac::update);
      return HexFormat.of().formatHex(mac.doFinal());
    } catch (GeneralSecurityException impossible) {
      throw new IllegalStateException("every Java has HmacSHA256", impossible);
    }
  }

  private static byte[] bytes(JsonObject json) {
    return json.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static JsonObject object(String part, byte[] text) throws MalformedMessage {
    try {
      JsonElement json = JsonParser.parseString(new String(text, StandardCharsets.UTF_8));
      if (json.isJsonObject()) {
        return json.getAsJsonObject();
      }
      throw new MalformedMessage(part + " is no JSON object");
    } catch (JsonParseException | StackOverflowError broken) {
      throw new MalformedMessage(part + " is no JSON");
    }
  }

  private static boolean isText(JsonElement value) {
    return value != null && value.isJsonPrimitive();
  }
}
