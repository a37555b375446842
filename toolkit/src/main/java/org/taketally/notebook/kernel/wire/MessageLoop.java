package org.taketally.notebook.kernel.wire;

import java.util.function.Consumer;
import org.zeromq.ZMQException;
import zmq.ZError;

/**
 * Serves one channel until its context is closed. A message that can't be read is reported and
 * skipped; whatever a handler throws, the next message is served.
 */
public final class MessageLoop implements Runnable {

  private final MessageSocket socket;
  private final Consumer<Message> handler;
  private final Consumer<String> log;

  /**
   * A loop, to be run by a thread of its own.
   *
   * @param socket to read from
   * @param handler gets each message
   * @param log gets a line for each message that was skipped
   */
  public MessageLoop(MessageSocket socket, Consumer<Message> handler, Consumer<String> log) {
    this.socket = socket;
    this.handler = handler;
    this.log = log;
  }

  @Override
  public void run() {
    while (true) {
      try {
        handler.accept(socket.receive());
      } catch (MalformedMessage malformed) {
        log.accept("ignored a message: " + malformed.getMessage());
      } catch (ZMQException closed) {
        if (closed.getErrorCode() == ZError.ETERM) {
          socket.close();
          return;
        }
        log.accept("socket: " + closed.getMessage());
      } catch (Throwable failure) {
        log.accept("a request failed: " + failure);
      }
    }
  }
}
