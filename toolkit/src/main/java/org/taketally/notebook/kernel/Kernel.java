package org.taketally.notebook.kernel;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.function.Supplier;
import org.taketally.notebook.kernel.engine.Engine;
import org.taketally.notebook.kernel.engine.output.CellError;
import org.taketally.notebook.kernel.engine.threads.SteadyThread;
import org.taketally.notebook.kernel.wire.ConnectionFile;
import org.taketally.notebook.kernel.wire.Heartbeat;
import org.taketally.notebook.kernel.wire.MalformedMessage;
import org.taketally.notebook.kernel.wire.Message;
import org.taketally.notebook.kernel.wire.MessageCodec;
import org.taketally.notebook.kernel.wire.MessageLoop;
import org.taketally.notebook.kernel.wire.MessageSocket;
import org.taketally.notebook.kernel.wire.Publisher;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;
import zmq.Msg;

/**
 * A running kernel: five sockets on loopback, a thread for each but one, and an engine. Speaks
 * version 5.3 of the messaging specification.
 *
 * @see <a href="https://jupyter-client.readthedocs.io/en/stable/messaging.html">Messaging in
 *     Jupyter</a>
 */
public final class Kernel implements AutoCloseable {

  private static final int LINGER_MILLISECONDS = 1000;

  /** Longer than a client's messages need from its socket to ours. */
  private static final int QUEUE_MILLISECONDS = 10;

  /** Longest frame taken from a client; no cell is nearly as long. */
  private static final long LONGEST_FRAME = 32L << 20;

  private final KernelSetup setup;
  private final ConnectionFile connection;
  private final ZMQ.Context context = ZMQ.context(1);
  private final CountDownLatch shutdown = new CountDownLatch(1);
  private final Publisher publisher;
  private final MessageSocket shell;
  private final MessageSocket control;
  private final MessageSocket stdin;
  private final Thread publishing;
  private final Engine engine;
  private final Requests requests;
  private final CellRequests cells;
  private volatile boolean failed;

  private Kernel(ConnectionFile connection, KernelSetup setup) {
    this.setup = setup;
    this.connection = connection;
    context.setThreadFactor(SteadyThread::new);
    context.setUncaughtExceptionHandler(this::fail);
    MessageCodec codec = new MessageCodec(connection.key());
    shell = new MessageSocket(bind(SocketType.ROUTER, connection.shellPort()), codec);
    control = new MessageSocket(bind(SocketType.ROUTER, connection.controlPort()), codec);
    stdin = new MessageSocket(bind(SocketType.ROUTER, connection.stdinPort()), codec);
    publisher =
        new Publisher(new MessageSocket(bind(SocketType.PUB, connection.iopubPort()), codec));
    KernelOutput output = new KernelOutput(publisher, stdin);
    engine = Engine.start(setup.engine(), output);
    History history = new History();
    requests = new Requests(engine, history, Requests.info(setup));
    cells = new CellRequests(engine, output, history);
    publishing = start("output", publisher);
  }

  /**
   * Binds the sockets and begins to serve.
   *
   * @param connection where to listen
   * @param setup name and engine
   * @return a running kernel
   */
  public static Kernel start(ConnectionFile connection, KernelSetup setup) {
    Kernel kernel = new Kernel(connection, setup);
    kernel.publishStatus("starting", new JsonObject());
    kernel.start(
        "heartbeat", new Heartbeat(kernel.bind(SocketType.ROUTER, connection.heartbeatPort())));
    kernel.start("control", new MessageLoop(kernel.control, kernel::onControl, setup.log()));
    kernel.start(
        "shell",
        () -> {
          new MessageLoop(kernel.shell, kernel::onShell, setup.log()).run();
          kernel.stdin.close();
        });
    return kernel;
  }

  private ZMQ.Socket bind(SocketType type, int port) {
    ZMQ.Socket socket = context.socket(type);
    socket.setLinger(LINGER_MILLISECONDS);
    socket.setSndHWM(0);
    socket.setRcvHWM(0);
    socket.setMaxMsgSize(LONGEST_FRAME);
    socket.setMsgAllocator(size -> new Msg(Math.max(0, size))); // a length may be below 0
    socket.bind(connection.address(port));
    return socket;
  }

  private Thread start(String name, Runnable loop) {
    Thread thread = new SteadyThread(loop, name);
    thread.start();
    return thread;
  }

  /** Sends the state, and before it all output so far. */
  private void publishStatus(String state, JsonObject parent) {
    JsonObject status = new JsonObject();
    status.addProperty("execution_state", state);
    publisher.publish("status", parent, status);
    publisher.flush();
  }

  /** A thread that carries messages has died: better to end and be restarted than to be deaf. */
  private void fail(Thread thread, Throwable failure) {
    setup.log().accept("%s failed, the kernel ends: %s".formatted(thread.getName(), failure));
    failed = true;
    shutdown.countDown();
  }

  /**
   * Whether the kernel asked to end because it could serve no longer.
   *
   * @return true if it failed
   */
  public boolean hasFailed() {
    return failed;
  }

  private void onShell(Message request) {
    List<Message> stopped = serve(request);
    for (Message waiting : stopped) {
      if (waiting.type().equals("execute_request")) {
        abort(waiting);
      } else {
        onShell(waiting);
      }
    }
  }

  /**
   * Serves one request. If it was a cell that failed, gives what waited behind it: only that is
   * stopped, not what a client sends once it knows of the failure.
   */
  private List<Message> serve(Message request) {
    publishStatus("busy", request.header());
    try {
      if (!request.type().equals("execute_request")) {
        answer(request, shell);
        return List.of();
      }
      JsonObject reply = attempt(request, () -> Optional.of(cells.run(request))).orElseThrow();
      boolean stops =
          Json.flag(request.content(), "stop_on_error", true)
              && reply.get("status").getAsString().equals("error");
      List<Message> waiting = stops ? waiting() : List.of();
      publisher.flush(); // every output before the reply
      shell.send(request.answer("execute_reply", reply));
      return waiting;
    } finally {
      publishStatus("idle", request.header());
    }
  }

  /** The answer, or else what went wrong, so that no client waits for ever. */
  private Optional<JsonObject> attempt(Message request, Supplier<Optional<JsonObject>> answer) {
    try {
      return answer.get();
    } catch (RuntimeException | Error failure) {
      setup.log().accept(request.type() + " failed: " + failure);
      String message = request.type() + " could not be served: " + failure.getMessage();
      JsonObject reply =
          KernelOutput.errorContent(
              new CellError(failure.getClass().getName(), message, List.of(message)));
      reply.addProperty("status", "error");
      return Optional.of(reply);
    }
  }

  private void abort(Message request) {
    publishStatus("busy", request.header());
    shell.send(request.answer("execute_reply", cells.aborted()));
    publishStatus("idle", request.header());
  }

  /** What has arrived but was not served yet. */
  private List<Message> waiting() {
    List<Message> all = new ArrayList<>();
    while (true) {
      try {
        Optional<Message> next = shell.receive(QUEUE_MILLISECONDS);
        if (next.isEmpty()) {
          return all;
        }
        all.add(next.get());
      } catch (MalformedMessage malformed) {
        setup.log().accept("ignored a message: " + malformed.getMessage());
      }
    }
  }

  private void onControl(Message request) {
    publishStatus("busy", request.header());
    try {
      switch (request.type()) {
        case "interrupt_request" -> {
          interrupt();
          control.send(request.answer("interrupt_reply", Json.ok()));
        }
        case "shutdown_request" -> shutDown(request, control);
        default -> answer(request, control);
      }
    } finally {
      publishStatus("idle", request.header());
    }
  }

  private void answer(Message request, MessageSocket socket) {
    if (request.type().equals("shutdown_request")) {
      shutDown(request, socket);
      return;
    }
    if (request.type().equals("comm_open")) {
      refuseComm(request);
      return;
    }
    Optional<JsonObject> reply =
        attempt(request, () -> requests.answer(request.type(), request.content()));
    if (reply.isPresent()) {
      socket.send(request.answer(request.type().replace("_request", "_reply"), reply.get()));
    } else {
      setup.log().accept("no answer to " + request.type());
    }
  }

  /** There is nothing on this side to talk to. */
  private void refuseComm(Message request) {
    JsonObject content = new JsonObject();
    content.addProperty("comm_id", Json.text(request.content(), "comm_id", ""));
    content.add("data", new JsonObject());
    publisher.publish("comm_close", request.header(), content);
  }

  private void shutDown(Message request, MessageSocket socket) {
    JsonObject reply = Json.ok();
    reply.addProperty("restart", Json.flag(request.content(), "restart", false));
    socket.send(request.answer("shutdown_reply", reply));
    publisher.publish("shutdown_reply", request.header(), reply);
    shutdown.countDown();
  }

  /** Stops the running cell. */
  public void interrupt() {
    engine.interrupt();
  }

  /** Asks the kernel to end, as a shutdown request does. */
  public void requestShutdown() {
    shutdown.countDown();
  }

  /**
   * Waits until the kernel was asked to end.
   *
   * @throws InterruptedException if this thread was told not to wait
   */
  public void awaitShutdown() throws InterruptedException {
    shutdown.await();
  }

  /**
   * Stops what runs, sends what is left to send, and closes the sockets, each on its own thread.
   * Takes two seconds at most.
   */
  @Override
  public void close() {
    engine.interrupt();
    publisher.close();
    Thread ending =
        start(
            "closing",
            () -> {
              context.term();
              engine.close();
            });
    try {
      publishing.join(LINGER_MILLISECONDS);
      ending.join(LINGER_MILLISECONDS);
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }
}
