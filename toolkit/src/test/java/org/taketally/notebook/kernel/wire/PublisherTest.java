package org.taketally.notebook.kernel.wire;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.zeromq.SocketType;
import org.zeromq.ZMQ;

/** Output leaves in order, and before whoever flushes goes on. */
@Timeout(60)
class PublisherTest {

  private static ZMQ.Socket pair(ZMQ.Context context, boolean bound) {
    ZMQ.Socket socket = context.socket(SocketType.PAIR);
    socket.setSndHWM(0);
    socket.setRcvHWM(0);
    if (bound) {
      socket.bind("inproc://output");
    } else {
      socket.connect("inproc://output");
    }
    return socket;
  }

  /** Nobody runs the publisher here, so what arrives was sent by the thread that flushed. */
  @Test
  void everything_said_so_far_is_sent_before_flush_returns() throws Exception {
    ZMQ.Context context = ZMQ.context(1);
    MessageCodec codec = new MessageCodec("key");
    ZMQ.Socket sending = pair(context, true);
    ZMQ.Socket receiving = pair(context, false);
    MessageSocket received = new MessageSocket(receiving, codec);
    Publisher publisher = new Publisher(new MessageSocket(sending, codec));
    JsonObject request = new JsonObject();
    publisher.print(request, "stdout", "one ");
    publisher.print(request, "stdout", "two");
    publisher.publish("display_data", request, new JsonObject());
    publisher.print(request, "stderr", "three");
    publisher.flush();
    List<String> types = new ArrayList<>();
    for (Optional<Message> next = received.receive(0); next.isPresent(); ) {
      types.add(next.get().type());
      next = received.receive(0);
    }
    assertThat(types).containsExactly("stream", "display_data", "stream");
    sending.close();
    receiving.close();
    context.term();
  }
}
