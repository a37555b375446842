package org.taketally.files;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Writes one version of a set after another until it is lost; or is lost at a given rename. */
final class LostProcess {

  static final List<String> NAMES = List.of("a.html", "b.csv", "c.csv", "d.md");

  private LostProcess() {}

  static FileSet version(Path folder, int version) {
    FileSet files = FileSet.in(folder, "pages", Guard.of(List.of()));
    for (String name : NAMES) {
      files.add(name, ("version " + version + "\n").repeat(5000) + "end\n");
    }
    if (version % 2 == 0) {
      files.add("even.md", "version " + version + "\nend\n");
    }
    return files;
  }

  /** Folder, first version, and the number of the rename at which to end, or -1. */
  public static void main(String[] arguments) throws IOException {
    Path folder = Path.of(arguments[0]);
    int end = Integer.parseInt(arguments[2]);
    int[] moves = {0};
    Mover mover =
        (from, to) -> {
          if (moves[0]++ == end) {
            Runtime.getRuntime().halt(9);
          }
          Mover.ATOMIC.move(from, to);
        };
    for (int version = Integer.parseInt(arguments[1]); ; version++) {
      version(folder, version).write(mover);
    }
  }
}
