package org.taketally.notebook.kernel.client;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BooleanSupplier;
import org.taketally.notebook.kernel.engine.output.Bundle;
import org.taketally.notebook.kernel.engine.output.CellError;
import org.taketally.notebook.kernel.engine.output.CellResult;
import org.taketally.notebook.kernel.engine.output.Output;
import org.taketally.notebook.kernel.wire.ClientSocket;
import org.taketally.notebook.kernel.wire.ConnectionFile;
import org.taketally.notebook.kernel.wire.MalformedMessage;
import org.taketally.notebook.kernel.wire.Message;
import org.taketally.notebook.kernel.wire.MessageCodec;
import org.taketally.notebook.kernel.wire.MessageSocket;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;

/** Runs cells in a kernel over its sockets. Used by one thread, except {@link #interrupt}. */
public final class KernelConnection implements AutoCloseable {

  private static final int LOOK_MILLISECONDS = 200;

  private final ZMQ.Context context = ZMQ.context(1);
  private final List<ZMQ.Socket> sockets = new ArrayList<>();
  private final MessageSocket shell;
  private final MessageSocket iopub;
  private final MessageSocket control;
  private final BooleanSupplier alive;

  private KernelConnection(ConnectionFile connection, BooleanSupplier alive) {
    this.alive = alive;
    MessageCodec codec = new MessageCodec(connection.key());
    byte[] identity = UUID.randomUUID().toString().getBytes(StandardCharsets.US_ASCII);
    iopub = connect(SocketType.SUB, connection.address(connection.iopubPort()), identity, codec);
    shell = connect(SocketType.DEALER, connection.address(connection.shellPort()), identity, codec);
    control =
        connect(SocketType.DEALER, connection.address(connection.controlPort()), identity, codec);
  }

  private MessageSocket connect(
      SocketType type, String address, byte[] identity, MessageCodec codec) {
    ZMQ.Socket socket = ClientSocket.of(context, type);
    if (type == SocketType.SUB) {
      socket.subscribe(new byte[0]);
    } else {
      socket.setIdentity(identity);
    }
    socket.connect(address);
    sockets.add(socket);
    return new MessageSocket(socket, codec);
  }

  /**
   * Connects to a kernel and waits until it answers and its output arrives.
   *
   * @param connection where it listens
   * @param alive whether its process lives
   * @return an open connection
   * @throws IOException if the kernel ended meanwhile
   */
  public static KernelConnection open(ConnectionFile connection, BooleanSupplier alive)
      throws IOException {
    KernelConnection open = new KernelConnection(connection, alive);
    Optional<Message> heard = Optional.empty();
    while (heard.isEmpty()) {
      open.request("kernel_info_request", new JsonObject());
      open.next(open.shell);
      heard = open.receive(open.iopub);
    }
    return open;
  }

  private Message request(String type, JsonObject content) {
    Message request = Message.of(type, List.of(), new JsonObject(), content);
    shell.send(request);
    return request;
  }

  /** The next message, or empty if none comes for a while. */
  private Optional<Message> receive(MessageSocket socket) throws IOException {
    try {
      return socket.receive(LOOK_MILLISECONDS);
    } catch (MalformedMessage malformed) {
      throw new IOException("the kernel sent what is no message: " + malformed.getMessage());
    }
  }

  /** The next message, as long as the kernel lives. */
  private Message next(MessageSocket socket) throws IOException {
    while (true) {
      Optional<Message> message = receive(socket);
      if (message.isPresent()) {
        return message.get();
      }
      if (!alive.getAsBoolean()) {
        throw new IOException("the kernel ended");
      }
    }
  }

  /**
   * Runs a cell.
   *
   * @param code the cell
   * @param output gets what it prints and displays
   * @return how it ended
   * @throws IOException if the kernel ended
   */
  public CellResult run(String code, Output output) throws IOException {
    JsonObject content = new JsonObject();
    content.addProperty("code", code);
    content.addProperty("allow_stdin", false);
    Message request = request("execute_request", content);
    Optional<Bundle> value = Optional.empty();
    Optional<CellError> error = Optional.empty();
    while (true) {
      Message message = next(iopub);
      JsonObject said = message.content();
      if (!belongs(message, request)) {
        pass(message, output);
      } else if (message.type().equals("execute_result")) {
        value = Optional.of(bundle(said));
      } else if (message.type().equals("error")) {
        error = Optional.of(error(said));
      } else if (isIdle(message)) {
        break;
      } else {
        pass(message, output);
      }
    }
    while (!belongs(next(shell), request)) {
      // an answer to an earlier request
    }
    return new CellResult(value, error);
  }

  private static boolean belongs(Message message, Message request) {
    JsonElement id = message.parent().get("msg_id");
    return id != null && id.equals(request.header().get("msg_id"));
  }

  private static boolean isIdle(Message message) {
    return message.type().equals("status")
        && message.content().get("execution_state").getAsString().equals("idle");
  }

  private static void pass(Message message, Output output) {
    JsonObject said = message.content();
    switch (message.type()) {
      case "stream" -> output.print(said.get("name").getAsString(), said.get("text").getAsString());
      case "display_data" -> output.display(bundle(said));
      case "update_display_data" -> output.update(bundle(said));
      case "clear_output" -> output.clear(said.get("wait").getAsBoolean());
      default -> {
        // status and echoes
      }
    }
  }

  private static Bundle bundle(JsonObject said) {
    JsonObject passing =
        said.has("transient") ? said.getAsJsonObject("transient") : new JsonObject();
    String id = passing.has("display_id") ? passing.get("display_id").getAsString() : "";
    return new Bundle(said.getAsJsonObject("data"), said.getAsJsonObject("metadata"), id);
  }

  private static CellError error(JsonObject said) {
    List<String> lines = new ArrayList<>();
    said.getAsJsonArray("traceback").forEach(line -> lines.add(line.getAsString()));
    return new CellError(said.get("ename").getAsString(), said.get("evalue").getAsString(), lines);
  }

  /**
   * Asks a question other than to run a cell.
   *
   * @param type e.g. {@code complete_request}
   * @param content what is asked
   * @return the reply's content
   * @throws IOException if the kernel ended
   */
  public JsonObject ask(String type, JsonObject content) throws IOException {
    Message request = request(type, content);
    Message reply = next(shell);
    while (!belongs(reply, request)) {
      reply = next(shell);
    }
    return reply.content();
  }

  /** Stops the running cell. May be called from any thread. */
  public synchronized void interrupt() {
    control.send(Message.of("interrupt_request", List.of(), new JsonObject(), new JsonObject()));
  }

  /** Asks the kernel to end and closes the connection. */
  @Override
  public synchronized void close() {
    control.send(Message.of("shutdown_request", List.of(), new JsonObject(), new JsonObject()));
    try {
      control.receive(LOOK_MILLISECONDS);
    } catch (MalformedMessage atTheEnd) {
      // it was asked
    }
    sockets.forEach(ZMQ.Socket::close);
    context.term();
  }
}
