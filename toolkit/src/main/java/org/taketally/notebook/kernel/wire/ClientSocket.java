package org.taketally.notebook.kernel.wire;

import org.zeromq.SocketType;
import org.zeromq.ZMQ;

/** Sockets of whoever speaks to a kernel. */
public final class ClientSocket {

  /**
   * A greeting on this machine takes a few milliseconds. JeroMQ 0.6.0 now and then forgets to send
   * it after connecting, and would notice after its usual 30 seconds only.
   */
  private static final int GREETING_MILLISECONDS = 1_000;

  private ClientSocket() {}

  /**
   * A socket that drops nothing, doesn't linger and connects anew where a kernel isn't greeted.
   *
   * @param context to make it in
   * @param type e.g. {@code DEALER}
   * @return a socket, to be connected
   */
  public static ZMQ.Socket of(ZMQ.Context context, SocketType type) {
    ZMQ.Socket socket = context.socket(type);
    socket.setLinger(0);
    socket.setRcvHWM(0);
    socket.setHandshakeIvl(GREETING_MILLISECONDS);
    return socket;
  }
}
