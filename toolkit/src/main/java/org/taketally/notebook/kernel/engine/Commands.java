package org.taketally.notebook.kernel.engine;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipFile;

/** Lines that begin with {@code %}: things to tell the engine rather than Java. */
final class Commands {

  private static final String HELP =
      """
      %jars PLACE...     adds jars or folders of classes; * stands for any name, as in lib/*.jar
      %maven GROUP:ARTIFACT:VERSION... [from PLACE]
                         adds libraries and what they need, from PLACE (a folder or an address;
                         else Maven Central) or, if once fetched, from this computer
      %classpath         lists what was added
      %variables         lists the variables with their types
      %limit SECONDS     stops this cell if it takes longer
      %time [CODE]       tells how long this cell took
      %help              lists these commands
      NAME?              shows what is known about a class, method or variable
      """;

  /** A command that can't be carried out; the message is for the user. */
  static final class Refused extends Exception {

    private static final long serialVersionUID = 1L;

    Refused(String message) {
      super(message);
    }
  }

  /** What a command can ask of the cell it stands in. */
  interface CellClock {

    /** Stops the cell later. */
    void limit(double seconds);

    /** Has the cell tell how long it took. */
    void tellTime();
  }

  private final Session session;
  private final Output output;
  private final CellClock clock;

  Commands(Session session, Output output, CellClock clock) {
    this.session = session;
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

  void run(String line) throws Refused {
    String[] words = line.substring(1).strip().split("\\s+", 2);
    String rest = words.length > 1 ? words[1] : "";
    switch (words[0]) {
      case "jars" -> addJars(rest);
      case "maven" -> addLibraries(rest);
      case "classpath" -> session.added().forEach(this::tell);
      case "variables" ->
          session.shell.variables().forEach(v -> tell(v.typeName() + " " + v.name()));
      case "limit" -> clock.limit(seconds(rest));
      case "time" -> clock.tellTime();
      case "help" -> output.print("stdout", HELP);
      default -> throw new Refused("no command %" + words[0] + "; %help lists them");
    }
  }

  private void tell(String line) {
    output.print("stdout", line + "\n");
  }

  private static double seconds(String text) throws Refused {
    try {
      double seconds = Double.parseDouble(text.strip());
      if (seconds > 0) {
        return seconds;
      }
    } catch (NumberFormatException wrong) {
      // said below
    }
    throw new Refused("%limit: found \"" + text + "\", expected a number of seconds above 0");
  }

  private void addJars(String places) throws Refused {
    if (places.isBlank()) {
      throw new Refused("%jars: expected the place of at least one jar or folder of classes");
    }
    List<Path> all = new ArrayList<>();
    for (String place : places.strip().split("\\s+")) {
      List<Path> found = place.contains("*") ? matching(place) : List.of(path(place));
      if (found.isEmpty() || !Files.exists(found.get(0))) {
        throw new Refused(
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

  private static Path path(String place) throws Refused {
    try {
      return Path.of(place);
    } catch (InvalidPathException wrong) {
      throw new Refused("%jars: \"" + place + "\" can't be the name of a file");
    }
  }

  /** Adds all or none: what the compiler can't open would spoil every later cell. */
  private void add(String command, List<Path> places) throws Refused {
    for (Path place : places) {
      if (!Files.isDirectory(place) && !isJar(place)) {
        throw new Refused(
            "%s: %s can't be opened, expected a jar or a folder of classes"
                .formatted(command, place));
      }
    }
    places.forEach(session::add);
  }

  private static boolean isJar(Path file) {
    try (ZipFile jar = new ZipFile(file.toFile())) {
      return jar.size() >= 0;
    } catch (IOException | RuntimeException unreadable) {
      return false;
    }
  }

  private void addLibraries(String request) throws Refused {
    String[] parts = request.strip().split("\\s+from\\s+", 2);
    List<String> coordinates = List.of(parts[0].strip().split("\\s+"));
    MavenLibraries libraries =
        parts.length > 1 ? MavenLibraries.from(parts[1].strip()) : MavenLibraries.usual();
    List<Path> jars = libraries.jars(coordinates);
    add("%maven", jars);
    tell("added " + jars.size() + (jars.size() == 1 ? " jar" : " jars"));
  }

  private static List<Path> matching(String place) throws Refused {
    int slash = place.lastIndexOf('/');
    Path folder = path(slash < 0 ? "." : place.substring(0, slash + 1));
    PathMatcher name =
        FileSystems.getDefault().getPathMatcher("glob:" + place.substring(slash + 1));
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> name.matches(file.getFileName()))
          .sorted()
          .collect(Collectors.toList());
    } catch (IOException missing) {
      throw new Refused("%jars: cannot look into folder " + folder.toAbsolutePath());
    }
  }
}
