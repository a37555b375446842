package org.taketally.notebook.kernel.wire;

import com.google.gson.JsonObject;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.zeromq.ZMQException;

/**
 * Publishes output in order. Text printed in quick succession goes out as one message; everything
 * else goes at once, from a thread of its own, or from the thread that calls {@link #flush}. No
 * line is dropped: the socket has no high-water mark.
 */
public final class Publisher implements Runnable {

  private static final long GATHER_MILLISECONDS = 25;
  private static final int GATHER_CHARACTERS = 1 << 16;

  /** Output not sent yet: printed text still growing, or a finished content. */
  private record Pending(
      String type, JsonObject parent, String stream, StringBuilder text, JsonObject content) {

    @SuppressWarnings("ReferenceEquality") // one request, one header object; comparing text is slow
    boolean takes(String name, JsonObject owner) {
      return text != null
          && stream.equals(name)
          && parent == owner
          && text.length() < GATHER_CHARACTERS;
    }

    JsonObject finished() {
      if (text == null) {
        return content;
      }
      JsonObject printed = new JsonObject();
      printed.addProperty("name", stream);
      printed.addProperty("text", text.toString());
      return printed;
    }
  }

  private final MessageSocket socket;

  /** Held while what is pending is taken and sent, so that order is kept; guards the socket. */
  private final Object sending = new Object();

  private final Deque<Pending> pending = new ArrayDeque<>();
  private boolean urgent;
  private boolean closing;
  private boolean closed;

  /**
   * A publisher, to be run by a thread of its own.
   *
   * @param socket bound, with send high-water mark 0
   */
  public Publisher(MessageSocket socket) {
    this.socket = socket;
  }

  /**
   * Publishes printed text, soon.
   *
   * @param parent header of the request that printed it
   * @param name {@code stdout} or {@code stderr}
   * @param text what was printed
   */
  public synchronized void print(JsonObject parent, String name, String text) {
    Pending last = pending.peekLast();
    if (last == null || !last.takes(name, parent)) {
      last = new Pending("stream", parent, name, new StringBuilder(), null);
      pending.add(last);
    }
    last.text.append(text);
    notifyAll();
  }

  /**
   * Publishes a message, after everything printed before it.
   *
   * @param type e.g. {@code status}
   * @param parent header of the request it belongs to
   * @param content what is said
   */
  public synchronized void publish(String type, JsonObject parent, JsonObject content) {
    pending.add(new Pending(type, parent, "", null, content));
    urgent = true;
    notifyAll();
  }

  /**
   * Sends everything published so far before it returns. Never to be called by the thread of a
   * cell, which may be stopped in the middle of it.
   */
  public void flush() {
    synchronized (sending) {
      for (Pending each : taken()) {
        send(each);
      }
    }
  }

  private synchronized List<Pending> taken() {
    List<Pending> all = closed ? List.of() : List.copyOf(pending);
    pending.clear();
    urgent = false;
    return all;
  }

  /** Sends what is left and ends {@link #run}. */
  public synchronized void close() {
    closing = true;
    notifyAll();
  }

  @Override
  public void run() {
    try {
      while (awaitOutput()) {
        flush();
      }
    } catch (InterruptedException | ZMQException down) {
      // the kernel is going down
    } finally {
      synchronized (sending) {
        socket.close();
        closed = true;
      }
    }
  }

  /** Waits until something is to be sent; false once nothing is left and nothing will come. */
  private synchronized boolean awaitOutput() throws InterruptedException {
    while (pending.isEmpty()) {
      if (closing) {
        return false;
      }
      wait();
    }
    long end = System.nanoTime() + GATHER_MILLISECONDS * 1_000_000;
    while (!closing && isGathering()) {
      long left = (end - System.nanoTime()) / 1_000_000;
      if (left <= 0) {
        break;
      }
      wait(left);
    }
    return true;
  }

  private boolean isGathering() {
    return !urgent && pending.size() == 1 && pending.getLast().text.length() < GATHER_CHARACTERS;
  }

  private void send(Pending output) {
    List<byte[]> topic = List.of(("kernel." + output.type).getBytes(StandardCharsets.UTF_8));
    socket.send(Message.of(output.type, topic, output.parent, output.finished()));
  }
}
