package org.taketally.notebook.install;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.List;
import org.taketally.notebook.KernelMain;
import org.taketally.notebook.ToolkitKernel;
import org.taketally.notebook.kernel.Kernel;
import org.taketally.notebook.kernel.client.KernelConnection;
import org.taketally.notebook.kernel.engine.output.Bundle;
import org.taketally.notebook.kernel.engine.output.Output;
import org.taketally.notebook.kernel.wire.ConnectionFile;

/** Starts a kernel and does once what users do first, so that Java knows the classes it takes. */
final class Rehearsal {

  private static final List<String> CELLS =
      List.of(
          "1 + 1",
          "int grafts = 50;\nSystem.out.println(grafts);",
          "Map.of(\"grafts\", List.of(1, 2)).values().stream().map(v -> v.size()).toList()",
          "record Bud(int number) { }\ndisplay(new Bud(1));",
          "nosuch",
          "throw new IllegalStateException(\"rehearsed\");");

  /** Nobody listens. */
  private static final class Unheard implements Output {

    @Override
    public void print(String stream, String text) {}

    @Override
    public void display(Bundle bundle) {}

    @Override
    public void update(Bundle bundle) {}

    @Override
    public void clear(boolean wait) {}

    @Override
    public void page(Bundle bundle) {}

    @Override
    public String ask(String prompt, boolean secret, Question question) throws IOException {
      throw new IOException("nobody listens");
    }
  }

  private Rehearsal() {}

  /**
   * Rehearses and ends.
   *
   * @param arguments none
   * @throws IOException if the kernel can't be reached
   * @throws ClassNotFoundException never
   */
  public static void main(String[] arguments) throws IOException, ClassNotFoundException {
    Class.forName(KernelMain.class.getName());
    ConnectionFile connection = ConnectionFile.unused();
    Kernel.start(connection, ToolkitKernel.setup());
    try (KernelConnection open = KernelConnection.open(connection, () -> true)) {
      for (String cell : CELLS) {
        open.run(cell, new Unheard());
      }
      JsonObject place = new JsonObject();
      place.addProperty("code", "grafts.");
      place.addProperty("cursor_pos", 4);
      open.ask("complete_request", place);
      open.ask("inspect_request", place);
      open.ask("is_complete_request", place);
    }
    System.exit(0);
  }
}
