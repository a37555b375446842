package org.taketally.notebook.kernel.wire;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

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

  private static final String LOOPBACK = "127.0.0.1";
  private static final int PORTS = 5;

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
   * A connection to be used on this machine: free loopback ports and a fresh key.
   *
   * @return a connection nobody uses yet
   * @throws IOException if there are no free ports
   */
  public static ConnectionFile unused() throws IOException {
    List<ServerSocket> held = new ArrayList<>();
    try {
      for (int i = 0; i < PORTS; i++) {
        held.add(new ServerSocket(0, 1, InetAddress.getLoopbackAddress()));
      }
    } finally {
      for (ServerSocket socket : held) {
        socket.close();
      }
    }
    int[] ports = held.stream().mapToInt(ServerSocket::getLocalPort).toArray();
    String key = UUID.randomUUID().toString();
    return new ConnectionFile(LOOPBACK, ports[0], ports[1], ports[2], ports[3], ports[4], key);
  }

  /**
   * This connection as a file's text.
   *
   * @return JSON that {@link #read} reads
   */
  public String toJson() {
    JsonObject json = new JsonObject();
    json.addProperty("transport", "tcp");
    json.addProperty("signature_scheme", "hmac-sha256");
    json.addProperty("ip", ip);
    json.addProperty("key", key);
    json.addProperty("shell_port", shellPort);
    json.addProperty("control_port", controlPort);
    json.addProperty("iopub_port", iopubPort);
    json.addProperty("stdin_port", stdinPort);
    json.addProperty("hb_port", heartbeatPort);
    return json.toString();
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
