package org.taketally.notebook.kernel.wire;

import com.google.gson.JsonObject;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;

/**
 * One message of the Jupyter protocol.
 *
 * @param identities routing frames of the sender, or the topic of published output
 * @param header id, session, type, date, version
 * @param parent header of the request this answers, empty if none
 * @param metadata free
 * @param content what is said
 */
public record Message(
    List<byte[]> identities,
    JsonObject header,
    JsonObject parent,
    JsonObject metadata,
    JsonObject content) {

  /** Version of the messaging specification this kernel speaks. */
  public static final String PROTOCOL_VERSION = "5.3";

  private static final String SESSION = UUID.randomUUID().toString();

  /**
   * A message of ours.
   *
   * @param type e.g. {@code execute_reply}
   * @param identities whom it goes to
   * @param parent header of the request it belongs to, empty if none
   * @param content what is said
   * @return the message, dated now
   */
  public static Message of(
      String type, List<byte[]> identities, JsonObject parent, JsonObject content) {
    JsonObject header = new JsonObject();
    header.addProperty("msg_id", UUID.randomUUID().toString());
    header.addProperty("session", SESSION);
    header.addProperty("username", "kernel");
    header.addProperty("date", Instant.now().truncatedTo(ChronoUnit.MICROS).toString());
    header.addProperty("msg_type", type);
    header.addProperty("version", PROTOCOL_VERSION);
    return new Message(identities, header, parent, new JsonObject(), content);
  }

  /**
   * An answer to this message.
   *
   * @param type e.g. {@code execute_reply}
   * @param reply what is said
   * @return the answer, addressed to this message's sender
   */
  public Message answer(String type, JsonObject reply) {
    return of(type, identities, header, reply);
  }

  /**
   * The kind of message.
   *
   * @return e.g. {@code execute_request}
   */
  public String type() {
    return header.get("msg_type").getAsString();
  }
}
