package org.taketally.notebook.kernel.wire;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * What the frontend tells a kernel about its sockets.
 *
 * @param ip address to bind, a loopback address
 * @param shellPort port for requests, 1 to 65535
 * @param controlPort port for interrupt and shutdown
 * @param iopubPort port for output
 * @param stdinPort port for questions to the user
 * @param heartbeatPort port for the heartbeat
 * @param key key that signs messages; empty means unsigned
 */
public record ConnectionFile(
    String ip,
    int shellPort,
    int controlPort,
    int iopubPort,
    int stdinPort,
    int heartbeatPort,
    String key) {

  /**
   * Reads a connection file and refuses what this kernel can't or won't do.
   *
   * @param file JSON as the Jupyter messaging specification describes it
   * @return the sockets' places
   * @throws IOException if the file can't be read or isn't a connection file
   * @throws IllegalArgumentException if transport, signature scheme or address isn't served
   */
  public static ConnectionFile read(Path file) throws IOException {
    try {
      return of(JsonParser.parseString(Files.readString(file)).getAsJsonObject());
    } catch (JsonParseException | IllegalStateException | NumberFormatException broken) {
      throw new IOException(file + ": not a connection file: " + broken.getMessage(), broken);
    }
  }

  private static ConnectionFile of(JsonObject json) throws IOException {
    expect("transport", "tcp", text(json, "transport"), "start Jupyter with the tcp transport");
    if (!text(json, "key").isEmpty()) {
      expect("signature scheme", "hmac-sha256", text(json, "signature_scheme"), "use the default");
    }
    String ip = text(json, "ip");
    if (!InetAddress.getByName(ip).isLoopbackAddress()) {
      throw new IllegalArgumentException(
          "address \"%s\": expected a loopback address such as 127.0.0.1; this kernel listens only on its own machine"
              .formatted(ip));
    }
    return new ConnectionFile(
        ip,
        port(json, "shell_port"),
        port(json, "control_port"),
        port(json, "iopub_port"),
        port(json, "stdin_port"),
        port(json, "hb_port"),
        text(json, "key"));
  }

  private static void expect(String what, String expected, String found, String remedy) {
    if (!found.equals(expected)) {
      throw new IllegalArgumentException(
          "%s \"%s\": expected \"%s\"; %s".formatted(what, found, expected, remedy));
    }
  }

  private static String text(JsonObject json, String name) {
    JsonElement value = json.get(name);
    return value == null || value.isJsonNull() ? "" : value.getAsString();
  }

  private static int port(JsonObject json, String name) throws IOException {
    JsonElement value = json.get(name);
    if (value == null) {
      throw new IOException("connection file: " + name + " is missing");
    }
    return value.getAsInt();
  }

  /**
   * The address of one socket.
   *
   * @param port one of this file's ports
   * @return e.g. {@code tcp://127.0.0.1:5555}
   */
  public String address(int port) {
    return "tcp://" + (ip.contains(":") ? "[" + ip + "]" : ip) + ":" + port;
  }
}
