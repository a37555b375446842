package org.taketally.notebook.kernel.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.zeromq.ZMQ;

/** A ZeroMQ socket that carries messages. Used by one thread only. */
public final class MessageSocket {

  private final ZMQ.Socket socket;
  private final MessageCodec codec;

  /**
   * Wraps a bound socket.
   *
   * @param socket bound already
   * @param codec signs and checks
   */
  public MessageSocket(ZMQ.Socket socket, MessageCodec codec) {
    this.socket = socket;
    this.codec = codec;
  }

  /**
   * Waits for the next message, as long as it takes.
   *
   * @return the message
   * @throws MalformedMessage if what came is none
   */
  public Message receive() throws MalformedMessage {
    return codec.decode(frames(socket.recv()));
  }

  /**
   * Waits for the next message, but not forever.
   *
   * @param milliseconds longest wait, 0 takes only what is there
   * @return the message, or empty if none came
   * @throws MalformedMessage if what came is none
   */
  public Optional<Message> receive(int milliseconds) throws MalformedMessage {
    socket.setReceiveTimeOut(milliseconds);
    try {
      byte[] first = socket.recv();
      return first == null ? Optional.empty() : Optional.of(codec.decode(frames(first)));
    } finally {
      socket.setReceiveTimeOut(-1);
    }
  }

  /**
   * Sends a message.
   *
   * @param message to send
   */
  public void send(Message message) {
    List<byte[]> frames = codec.encode(message);
    int last = frames.size() - 1;
    for (int i = 0; i <= last; i++) {
      socket.send(frames.get(i), i < last ? ZMQ.SNDMORE : 0);
    }
  }

  /** Closes the socket; by the thread that uses it. */
  public void close() {
    socket.close();
  }

  private List<byte[]> frames(byte[] first) {
    List<byte[]> frames = new ArrayList<>();
    frames.add(first);
    while (socket.hasReceiveMore()) {
      frames.add(socket.recv());
    }
    return frames;
  }
}
