package org.taketally.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;

/**
 * What may be written over: a file that was written here and not changed since; never a file that
 * is being read.
 *
 * @param inputs files being read; a link to one counts as the file itself
 * @param replace whether the person asked to write over other files too
 */
public record Guard(List<Path> inputs, boolean replace) {

  public Guard {
    inputs = List.copyOf(inputs);
  }

  /**
   * A guard of files being read.
   *
   * @param inputs files that must never be written over
   * @return the guard; other files a person made are spared, too
   */
  public static Guard of(Collection<Path> inputs) {
    return new Guard(List.copyOf(inputs), false);
  }

  /** Throws a sentence if the target is not ours to write. */
  void require(Path target, Ledger ledger) throws IOException {
    if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    requireNotRead(target);
    if (Files.isDirectory(target, LinkOption.NOFOLLOW_LINKS)) {
      throw new WouldReplace(
          "%s is a folder, and a file was to be written there; choose another name or folder to write to"
              .formatted(target));
    }
    if (!replace && !ledger.isAsWritten(target)) {
      throw new WouldReplace(
          "%s stands there already and %s, so nothing was written; choose another name or folder, or say --replace to write over it"
              .formatted(
                  target,
                  ledger.knows(target)
                      ? "was changed since Taketally wrote it"
                      : "is not known to be written by Taketally"));
    }
  }

  /** Throws a sentence if the target is a file being read. */
  void requireNotRead(Path target) throws IOException {
    for (Path input : inputs) {
      if (Files.exists(target) && Files.exists(input) && Files.isSameFile(input, target)) {
        throw new WouldReplace(
            "%s is one of the files being read, so nothing was written over it; choose another name or folder to write to"
                .formatted(target));
      }
    }
  }
}
