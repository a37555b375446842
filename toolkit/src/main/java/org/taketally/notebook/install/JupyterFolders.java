package org.taketally.notebook.install;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Where Jupyter looks for kernels.
 *
 * @see <a href="https://docs.jupyter.org/en/latest/use/jupyter-directories.html">Jupyter's common
 *     directories</a>
 */
public final class JupyterFolders {

  private final Map<String, String> environment;
  private final Path home;
  private final String system;

  JupyterFolders(Map<String, String> environment, Path home, String system) {
    this.environment = environment;
    this.system = system.toLowerCase(Locale.ROOT);
    String named = environment.getOrDefault("HOME", "");
    // as Jupyter does; Java itself asks the system's list of users
    this.home = named.isEmpty() || this.system.startsWith("windows") ? home : Path.of(named);
  }

  /**
   * The folders of this machine and user.
   *
   * @return folders as the environment tells them
   */
  public static JupyterFolders ofThisMachine() {
    return new JupyterFolders(
        System.getenv(), Path.of(System.getProperty("user.home")), System.getProperty("os.name"));
  }

  /**
   * The user's own data folder.
   *
   * @return a folder that need not exist
   */
  public Path user() {
    String chosen = environment.getOrDefault("JUPYTER_DATA_DIR", "");
    if (!chosen.isEmpty()) {
      return Path.of(chosen);
    }
    if (system.startsWith("mac")) {
      return home.resolve("Library/Jupyter");
    }
    if (system.startsWith("windows")) {
      return Path.of(environment.getOrDefault("APPDATA", home.toString()), "jupyter");
    }
    String data = environment.getOrDefault("XDG_DATA_HOME", "");
    return (data.isEmpty() ? home.resolve(".local/share") : Path.of(data)).resolve("jupyter");
  }

  /**
   * The data folder below an installation prefix.
   *
   * @param prefix e.g. {@code /usr/local} or a virtual environment
   * @return a folder that need not exist
   */
  public static Path below(Path prefix) {
    return prefix.resolve("share/jupyter");
  }

  /**
   * Every kernel folder there is, the first of a name being the one Jupyter takes.
   *
   * @return folders that hold a {@code kernel.json}
   */
  public List<Path> kernels() {
    List<Path> data = new ArrayList<>();
    for (String each : environment.getOrDefault("JUPYTER_PATH", "").split(":")) {
      if (!each.isBlank()) {
        data.add(Path.of(each));
      }
    }
    data.add(user());
    data.add(below(Path.of("/usr/local")));
    data.add(below(Path.of("/usr")));
    return data.stream()
        .map(folder -> folder.resolve("kernels"))
        .filter(Files::isDirectory)
        .flatMap(kernels -> kernelsIn(kernels).stream())
        .toList();
  }

  private static List<Path> kernelsIn(Path folder) {
    try (Stream<Path> each = Files.list(folder)) {
      return each.filter(kernel -> Files.isRegularFile(kernel.resolve("kernel.json")))
          .sorted()
          .toList();
    } catch (IOException unreadable) {
      return List.of(); // as Jupyter does
    }
  }
}
