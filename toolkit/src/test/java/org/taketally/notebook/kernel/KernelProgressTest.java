package org.taketally.notebook.kernel;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.taketally.notebook.kernel.KernelClient.Outcome;
import org.taketally.notebook.kernel.engine.EngineOptions;
import org.taketally.notebook.kernel.wire.ConnectionFile;

/** A cell that takes long says what it is at, in place, and only where somebody watches. */
@Timeout(120)
class KernelProgressTest {

  private Kernel kernel;
  private KernelClient client;

  @BeforeEach
  void start() throws Exception {
    ConnectionFile connection = ConnectionFile.unused();
    EngineOptions options =
        EngineOptions.usual()
            .naming(
                stack ->
                    Arrays.stream(stack).anyMatch(frame -> frame.getMethodName().equals("sleep"))
                        ? "counting <buds>"
                        : "");
    kernel = Kernel.start(connection, new KernelSetup("Test", "1", options, line -> {}));
    client = new KernelClient(connection).awaitReady();
  }

  @AfterEach
  void stop() {
    client.close();
    kernel.close();
  }

  private static String text(JsonObject content, String form) {
    return content.getAsJsonObject("data").get(form).getAsString();
  }

  @Test
  void what_a_long_cell_is_at_stands_in_one_place_and_is_gone_at_its_end() throws Exception {
    Outcome outcome = client.execute("Thread.sleep(4_500);");
    List<JsonObject> first = outcome.of("display_data");
    assertThat(first).hasSize(1);
    assertThat(text(first.get(0), "text/plain")).matches("counting <buds> \\(\\d+ s\\)");
    assertThat(text(first.get(0), "text/html")).contains("counting &lt;buds>");
    List<JsonObject> updates = outcome.of("update_display_data");
    assertThat(updates).hasSizeGreaterThanOrEqualTo(2);
    assertThat(updates)
        .allMatch(update -> update.get("transient").equals(first.get(0).get("transient")));
    assertThat(text(updates.get(updates.size() - 1), "text/plain")).isEmpty();
    assertThat(client.execute("1").of("update_display_data")).isEmpty();
  }

  @Test
  void nothing_is_told_where_nobody_watches() throws Exception {
    JsonObject batch = KernelClient.code("Thread.sleep(2_600);");
    batch.addProperty("allow_stdin", false);
    assertThat(client.execute(batch).of("display_data")).isEmpty();
  }
}
