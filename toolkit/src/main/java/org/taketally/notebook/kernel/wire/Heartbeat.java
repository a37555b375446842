package org.taketally.notebook.kernel.wire;

import java.util.ArrayList;
import java.util.List;
import org.zeromq.ZMQ;
import org.zeromq.ZMQException;
import zmq.ZError;

/** Sends back whatever comes, so that a frontend knows the kernel lives. */
public final class Heartbeat implements Runnable {

  private final ZMQ.Socket socket;

  /**
   * A heartbeat, to be run by a thread of its own.
   *
   * @param socket bound router socket: unlike a reply socket, it isn't bound to whoever asked last
   */
  public Heartbeat(ZMQ.Socket socket) {
    this.socket = socket;
  }

  @Override
  public void run() {
    while (true) {
      try {
        sendBack(received());
      } catch (ZMQException failure) {
        if (failure.getErrorCode() == ZError.ETERM) {
          socket.close();
          return;
        }
      }
    }
  }

  /** All parts of one message: whom it goes back to, and what. */
  private List<byte[]> received() {
    List<byte[]> parts = new ArrayList<>();
    do {
      parts.add(socket.recv());
    } while (socket.hasReceiveMore());
    return parts;
  }

  private void sendBack(List<byte[]> parts) {
    int last = parts.size() - 1;
    for (int i = 0; i <= last; i++) {
      socket.send(parts.get(i), i < last ? ZMQ.SNDMORE : 0);
    }
  }
}
