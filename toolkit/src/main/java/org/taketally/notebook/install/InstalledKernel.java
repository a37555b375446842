package org.taketally.notebook.install;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * A kernel that Jupyter finds.
 *
 * @param name by which Jupyter calls it
 * @param displayName shown to users
 * @param folder where it is
 * @param problem what keeps it from starting, empty if nothing is known
 */
public record InstalledKernel(String name, String displayName, Path folder, String problem) {

  /**
   * All kernels, in the order Jupyter looks for them.
   *
   * @param folders where to look
   * @return kernels
   */
  public static List<InstalledKernel> all(JupyterFolders folders) {
    return folders.kernels().stream().map(InstalledKernel::read).toList();
  }

  private static InstalledKernel read(Path folder) {
    String name = folder.getFileName().toString();
    try {
      JsonObject spec =
          JsonParser.parseString(Files.readString(folder.resolve("kernel.json"))).getAsJsonObject();
      return new InstalledKernel(
          name, spec.get("display_name").getAsString(), folder, problem(spec, folder));
    } catch (IOException
        | JsonParseException
        | IllegalStateException
        | NullPointerException broken) {
      return new InstalledKernel(name, name, folder, "kernel.json can't be read");
    }
  }

  private static String problem(JsonObject spec, Path folder) {
    JsonArray command = spec.getAsJsonArray("argv");
    Path program = Path.of(command.get(0).getAsString());
    if (program.isAbsolute() && !Files.isExecutable(program)) {
      return program + " is gone; install the kernel again";
    }
    boolean needsJar = folder.getFileName().toString().equals(KernelInstall.NAME);
    return needsJar && !Files.exists(folder.resolve("taketally.jar"))
        ? "its jar is gone; install the kernel again"
        : "";
  }

  /**
   * Whether it is Taketally's.
   *
   * @return true if it has the name this toolkit installs under
   */
  public boolean isOurs() {
    return name.equals(KernelInstall.NAME);
  }

  /**
   * One line for a list.
   *
   * @return name, shown name, place, and what is wrong
   */
  public String sentence() {
    String line = "%s (%s) in %s".formatted(name, displayName, folder);
    return problem.isEmpty() ? line : line + ": " + problem;
  }
}
