package org.taketally.notebook.kernel.client;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.taketally.notebook.kernel.wire.ConnectionFile;

/** What the runner does where a kernel can't be reached at once. */
@Timeout(60)
class KernelConnectionTest {

  /** JeroMQ loses the greeting of a connection now and then, and by itself waits 30 seconds. */
  @Test
  void a_connection_that_is_not_greeted_is_made_anew_within_seconds() throws Exception {
    ConnectionFile connection = ConnectionFile.unused();
    AtomicBoolean alive = new AtomicBoolean(true);
    try (ServerSocket silent =
        new ServerSocket(connection.shellPort(), 5, InetAddress.getLoopbackAddress())) {
      silent.setSoTimeout(15_000);
      CompletableFuture<Void> opening =
          CompletableFuture.runAsync(() -> open(connection, alive::get));
      try (Socket first = silent.accept();
          Socket second = silent.accept()) {
        assertThat(second.getPort()).isNotEqualTo(first.getPort());
      }
      alive.set(false);
      assertThatThrownBy(() -> opening.get(10, TimeUnit.SECONDS))
          .hasMessageContaining("the kernel ended");
    }
  }

  private static void open(ConnectionFile connection, java.util.function.BooleanSupplier alive) {
    try {
      KernelConnection.open(connection, alive).close();
    } catch (IOException ended) {
      throw new IllegalStateException(ended.getMessage(), ended);
    }
  }
}
