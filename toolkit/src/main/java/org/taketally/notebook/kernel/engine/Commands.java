package org.taketally.notebook.kernel.engine;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.PatternSyntaxException;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.taketally.notebook.kernel.engine.output.Output;
import org.taketally.notebook.kernel.engine.output.Stopped;
import org.taketally.notebook.kernel.engine.threads.Clock;
import org.taketally.notebook.kernel.engine.threads.Shell;

/** Lines that begin with {@code %} or {@code !}: things to tell the engine rather than Java. */
final class Commands {

  private static final String HELP =
      """
      A line that begins with %, and the rest of a line behind !:
      %jars PLACE...     adds jars or folders of classes; * stands for any name, as in lib/*.jar
      %maven GROUP:ARTIFACT:VERSION... [from PLACE]
                         adds libraries and what they need, from PLACE (a folder or an address;
                         else Maven Central) or, if once fetched, from this computer;
                         -GROUP:ARTIFACT among them leaves that library out
      %classpath         lists what was added
      %variables         lists the variables with their types
      %limit SECONDS     stops this cell if it takes longer
      %time [CODE]       tells how long this cell took
      %help              lists these commands
      !COMMAND           runs a command of the system's shell
      ?NAME, NAME?       shows what is known about a class, method or variable

      A cell that begins with %%:
      %%time             tells how long the cell took
      %%bash             runs the cell in the system's shell
      %%html             shows the cell as HTML
      %%markdown         shows the cell as Markdown
      %%svg              shows the cell as a drawing
      """;

  private final Workspace workspace;
  private final Output output;
  private final Clock clock;

  Commands(Workspace workspace, Output output, Clock clock) {
    this.workspace = workspace;
    this.output = output;
    this.clock = clock;
  }

  /** What lines of commands begin with, e.g. {@code %jars}. */
  static List<String> names() {
    return HELP.lines()
        .filter(line -> line.startsWith("%"))
        .map(line -> line.split(" ", 2)[0])
        .toList();
  }

  void run(String line) throws CommandRefused {
    if (line.startsWith("!")) {
      shell(line.substring(1));
      return;
    }
    String[] words = line.substring(1).strip().split("\\s+", 2);
    String rest = words.length > 1 ? words[1] : "";
    switch (words[0]) {
      case "jars" -> addJars(rest);
      case "maven" -> addLibraries(rest);
      case "classpath" -> workspace.added().forEach(this::tell);
      case "variables" ->
          workspace.shell.variables().forEach(v -> tell(v.typeName() + " " + v.name()));
      case "limit" -> clock.limit(seconds(rest));
      case "time" -> clock.tellTime();
      case "help" -> output.print("stdout", HELP);
      default -> throw new CommandRefused("no command %" + words[0] + "; %help lists them");
    }
  }

  /** Runs a command of the system's shell, as the code of a cell is run: it can be stopped. */
  void shell(String script) throws CommandRefused {
    try {
      int status = (int) workspace.control.call(() -> Shell.run(script, output));
      if (status != 0) {
        throw new CommandRefused("the shell ended with status " + status);
      }
    } catch (CommandRefused refused) {
      throw refused;
    } catch (Stopped stopped) {
      throw new CommandRefused(stopped.getMessage());
    } catch (Throwable failure) {
      throw new CommandRefused("the shell could not be run: " + failure.getMessage());
    }
  }

  private void tell(String line) {
    output.print("stdout", line + "\n");
  }

  private static double seconds(String text) throws CommandRefused {
    try {
      double seconds = Double.parseDouble(text.strip());
      if (seconds > 0) {
        return seconds;
      }
    } catch (NumberFormatException wrong) {
      // said below
    }
    throw new CommandRefused(
        "%limit: found \"" + text + "\", expected a number of seconds above 0");
  }

  private void addJars(String places) throws CommandRefused {
    if (places.isBlank()) {
      throw new CommandRefused(
          "%jars: expected the place of at least one jar or folder of classes");
    }
    List<Path> all = new ArrayList<>();
    for (String place : places.strip().split("\\s+")) {
      List<Path> found = place.contains("*") ? matching(place) : List.of(path(place));
      if (found.isEmpty() || !Files.exists(found.get(0))) {
        throw new CommandRefused(
            "%jars: found nothing at "
                + place
                + " (looked from "
                + Path.of("").toAbsolutePath()
                + ")");
      }
      all.addAll(found);
    }
    add("%jars", all);
  }

  private static Path path(String place) throws CommandRefused {
    try {
      return Path.of(place);
    } catch (InvalidPathException wrong) {
      throw new CommandRefused("%jars: \"" + place + "\" can't be the name of a file");
    }
  }

  /** Adds all or none: what the compiler can't open would spoil every later cell. */
  private void add(String command, List<Path> places) throws CommandRefused {
    for (Path place : places) {
      if (!Files.isDirectory(place) && !isJar(place)) {
        throw new CommandRefused(
            "%s: %s can't be opened, expected a jar or a folder of classes"
                .formatted(command, place));
      }
    }
    places.forEach(workspace::add);
  }

  private static boolean isJar(Path file) {
    try (ZipFile jar = new ZipFile(file.toFile())) {
      return jar.size() >= 0;
    } catch (IOException | RuntimeException unreadable) {
      return false;
    }
  }

  private void addLibraries(String request) throws CommandRefused {
    String[] parts = request.strip().split("\\s+from\\s+", 2);
    List<String> coordinates = List.of(parts[0].strip().split("\\s+"));
    MavenLibraries libraries =
        parts.length > 1 ? MavenLibraries.from(parts[1].strip()) : MavenLibraries.usual();
    List<Path> jars = libraries.jars(coordinates);
    add("%maven", jars);
    tell("added " + jars.size() + (jars.size() == 1 ? " jar" : " jars"));
  }

  private static List<Path> matching(String place) throws CommandRefused {
    int slash = place.lastIndexOf('/');
    Path folder = path(slash < 0 ? "." : place.substring(0, slash + 1));
    try (Stream<Path> files = Files.list(folder)) {
      PathMatcher name =
          FileSystems.getDefault().getPathMatcher("glob:" + place.substring(slash + 1));
      return files
          .filter(file -> name.matches(file.getFileName()))
          .sorted()
          .collect(Collectors.toList());
    } catch (PatternSyntaxException wrong) {
      throw new CommandRefused("%jars: found \"" + place + "\", expected * or a name");
    } catch (IOException missing) {
      throw new CommandRefused("%jars: cannot look into folder " + folder.toAbsolutePath());
    }
  }
}
