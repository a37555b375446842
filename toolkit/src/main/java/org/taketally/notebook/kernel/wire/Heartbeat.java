package org.taketally.notebook.kernel.wire;

import org.zeromq.ZMQ;
import org.zeromq.ZMQException;

/** Sends back whatever comes, so that a frontend knows the kernel lives. */
public final class Heartbeat implements Runnable {

  private final ZMQ.Socket socket;

  /**
   * A heartbeat, to be run by a thread of its own.
   *
   * @param socket bound reply socket
   */
  public Heartbeat(ZMQ.Socket socket) {
    this.socket = socket;
  }

  @Override
  public void run() {
    try {
      while (true) {
        byte[] beat = socket.recv();
        boolean more = socket.hasReceiveMore();
        socket.send(beat, more ? ZMQ.SNDMORE : 0);
      }
    } catch (ZMQException closed) {
      socket.close();
    }
  }
}
