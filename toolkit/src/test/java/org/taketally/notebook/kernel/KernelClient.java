package org.taketally.notebook.kernel;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.Predicate;
import org.taketally.notebook.kernel.wire.ClientSocket;
import org.taketally.notebook.kernel.wire.ConnectionFile;
import org.taketally.notebook.kernel.wire.MalformedMessage;
import org.taketally.notebook.kernel.wire.Message;
import org.taketally.notebook.kernel.wire.MessageCodec;
import org.taketally.notebook.kernel.wire.MessageSocket;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;

/** A frontend for tests: speaks the protocol over loopback sockets. */
public final class KernelClient implements AutoCloseable {

  private static final int PATIENCE_MILLISECONDS = 60_000;

  /** What a request brought: its reply and all that was published for it up to {@code idle}. */
  public record Outcome(JsonObject reply, List<Message> published) {

    public String status() {
      return reply.get("status").getAsString();
    }

    public List<JsonObject> of(String type) {
      return published.stream().filter(m -> m.type().equals(type)).map(Message::content).toList();
    }

    public String printed(String stream) {
      StringBuilder all = new StringBuilder();
      for (JsonObject content : of("stream")) {
        if (content.get("name").getAsString().equals(stream)) {
          all.append(content.get("text").getAsString());
        }
      }
      return all.toString();
    }

    /** Plain text of the result. */
    public String result() {
      if (of("execute_result").isEmpty()) {
        throw new AssertionError("no result: " + reply);
      }
      return of("execute_result").get(0).getAsJsonObject("data").get("text/plain").getAsString();
    }

    public String traceback() {
      StringBuilder all = new StringBuilder();
      reply
          .getAsJsonArray("traceback")
          .forEach(
              line ->
                  all.append(line.getAsString().replaceAll("\u001b\\[[0-9;]*m", "")).append('\n'));
      return all.toString();
    }
  }

  private final ZMQ.Context context = ZMQ.context(1);
  private final ConnectionFile connection;
  private final MessageCodec codec;
  private final byte[] identity = UUID.randomUUID().toString().getBytes(StandardCharsets.UTF_8);
  private final ZMQ.Socket shellSocket;
  final MessageSocket shell;
  final MessageSocket control;
  final MessageSocket stdin;
  final MessageSocket iopub;
  private final List<ZMQ.Socket> sockets = new ArrayList<>();

  public KernelClient(ConnectionFile connection) {
    this.connection = connection;
    codec = new MessageCodec(connection.key());
    ZMQ.Socket sub = connect(SocketType.SUB, connection.iopubPort());
    sub.subscribe(new byte[0]);
    iopub = new MessageSocket(sub, codec);
    shellSocket = connect(SocketType.DEALER, connection.shellPort());
    shell = new MessageSocket(shellSocket, codec);
    control = new MessageSocket(connect(SocketType.DEALER, connection.controlPort()), codec);
    stdin = new MessageSocket(connect(SocketType.DEALER, connection.stdinPort()), codec);
  }

  private ZMQ.Socket connect(SocketType type, int port) {
    ZMQ.Socket socket = ClientSocket.of(context, type);
    if (type == SocketType.DEALER) {
      socket.setIdentity(identity);
    }
    socket.connect(connection.address(port));
    sockets.add(socket);
    return socket;
  }

  /** Waits until the kernel answers and its output is received here. */
  public KernelClient awaitReady() throws MalformedMessage {
    for (int attempt = 0; attempt < 200; attempt++) {
      Message request = send("kernel_info_request", new JsonObject());
      reply(request);
      if (!published(request, 300).isEmpty()) {
        return this;
      }
    }
    throw new AssertionError("no output received from the kernel");
  }

  public Message send(String type, JsonObject content) {
    Message request = Message.of(type, List.of(), new JsonObject(), content);
    shell.send(request);
    return request;
  }

  public Message sendControl(String type, JsonObject content) {
    Message request = Message.of(type, List.of(), new JsonObject(), content);
    control.send(request);
    return request;
  }

  /** Sends frames as they are, to try what a kernel makes of them. */
  void sendRaw(byte[]... frames) {
    for (int i = 0; i < frames.length; i++) {
      shellSocket.send(frames[i], i < frames.length - 1 ? ZMQ.SNDMORE : 0);
    }
  }

  List<byte[]> encode(Message message) {
    return codec.encode(message);
  }

  public JsonObject reply(Message request) throws MalformedMessage {
    return replyOn(shell, request).content();
  }

  public JsonObject controlReply(Message request) throws MalformedMessage {
    return replyOn(control, request).content();
  }

  private static Message replyOn(MessageSocket socket, Message request) throws MalformedMessage {
    while (true) {
      Message reply =
          socket
              .receive(PATIENCE_MILLISECONDS)
              .orElseThrow(() -> new AssertionError("no reply to " + request.type()));
      if (isFor(request, reply)) {
        return reply;
      }
    }
  }

  private static boolean isFor(Message request, Message message) {
    JsonElement id = message.parent().get("msg_id");
    return id != null && id.equals(request.header().get("msg_id"));
  }

  /** What was published for a request up to {@code idle}. */
  public List<Message> published(Message request) throws MalformedMessage {
    List<Message> messages = published(request, PATIENCE_MILLISECONDS);
    if (messages.isEmpty()) {
      throw new AssertionError("nothing was published for " + request.type());
    }
    return messages;
  }

  private List<Message> published(Message request, int patience) throws MalformedMessage {
    List<Message> messages = new ArrayList<>();
    while (true) {
      var next = iopub.receive(patience);
      if (next.isEmpty()) {
        return messages;
      }
      if (isFor(request, next.get())) {
        messages.add(next.get());
        if (isIdle(next.get())) {
          return messages;
        }
      }
    }
  }

  private static boolean isIdle(Message message) {
    return message.type().equals("status")
        && message.content().get("execution_state").getAsString().equals("idle");
  }

  /** The next message published that fits, whatever request it belongs to. */
  public Message awaitPublished(Predicate<Message> fits) throws MalformedMessage {
    while (true) {
      Message next =
          iopub
              .receive(PATIENCE_MILLISECONDS)
              .orElseThrow(() -> new AssertionError("not published in time"));
      if (fits.test(next)) {
        return next;
      }
    }
  }

  public static JsonObject code(String code) {
    JsonObject content = new JsonObject();
    content.addProperty("code", code);
    content.addProperty("silent", false);
    content.addProperty("store_history", true);
    content.add("user_expressions", new JsonObject());
    content.addProperty("allow_stdin", true);
    content.addProperty("stop_on_error", true);
    return content;
  }

  public Outcome execute(String code) throws MalformedMessage {
    return execute(code(code));
  }

  public Outcome execute(JsonObject content) throws MalformedMessage {
    Message request = send("execute_request", content);
    return new Outcome(reply(request), published(request));
  }

  JsonObject ask(String type, JsonObject content) throws MalformedMessage {
    return reply(send(type, content));
  }

  JsonObject at(String type, String code, int cursor) throws MalformedMessage {
    JsonObject content = new JsonObject();
    content.addProperty("code", code);
    content.addProperty("cursor_pos", cursor);
    content.addProperty("detail_level", 0);
    return ask(type, content);
  }

  static List<String> texts(JsonArray array) {
    List<String> texts = new ArrayList<>();
    array.forEach(each -> texts.add(each.getAsString()));
    return texts;
  }

  /** One heartbeat of two parts; true if it came back. */
  boolean beats() {
    ZMQ.Socket heartbeat = connect(SocketType.REQ, connection.heartbeatPort());
    heartbeat.setReceiveTimeOut(PATIENCE_MILLISECONDS);
    heartbeat.send("pi", ZMQ.SNDMORE);
    heartbeat.send("ng");
    return "pi".equals(heartbeat.recvStr()) && "ng".equals(heartbeat.recvStr());
  }

  @Override
  public void close() {
    sockets.forEach(ZMQ.Socket::close);
    context.term();
  }
}
