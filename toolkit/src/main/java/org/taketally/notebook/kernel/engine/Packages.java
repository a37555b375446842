package org.taketally.notebook.kernel.engine;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.zip.ZipFile;

/** Names of the packages that cells can import: Java's own, the program's, and those added. */
final class Packages {

  private final NavigableSet<String> names = new TreeSet<>();

  /**
   * Packages there are now.
   *
   * @param added jars and folders beside the program's own
   */
  Packages(List<String> added) {
    ModuleLayer.boot()
        .modules()
        .forEach(
            module -> module.getPackages().stream().filter(module::isExported).forEach(names::add));
    for (String place : System.getProperty("java.class.path").split(File.pathSeparator)) {
      add(Path.of(place));
    }
    added.forEach(place -> add(Path.of(place)));
  }

  private void add(Path place) {
    try {
      if (Files.isDirectory(place)) {
        addFolder(place);
      } else if (Files.isRegularFile(place)) {
        try (ZipFile jar = new ZipFile(place.toFile())) {
          jar.stream().forEach(entry -> addClass(entry.getName()));
        }
      }
    } catch (IOException | RuntimeException unreadable) {
      // then its packages aren't offered
    }
  }

  private void addFolder(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      files.forEach(file -> addClass(folder.relativize(file).toString().replace('\\', '/')));
    }
  }

  private void addClass(String file) {
    int slash = file.lastIndexOf('/');
    if (slash > 0 && file.endsWith(".class") && !file.startsWith("META-INF")) {
      names.add(file.substring(0, slash).replace('/', '.'));
    }
  }

  /**
   * The next parts of names of packages.
   *
   * @param begun a name with dots, the last part perhaps unfinished
   * @return parts that may stand for the unfinished one, each once
   */
  List<String> after(String begun) {
    int dot = begun.lastIndexOf('.') + 1;
    return names.tailSet(begun).stream()
        .takeWhile(name -> name.startsWith(begun))
        .map(name -> name.substring(dot).replaceFirst("\\..*", ""))
        .filter(part -> !part.isEmpty())
        .distinct()
        .toList();
  }
}
