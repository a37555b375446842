package org.taketally.files;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Gives a finished file its place. */
@FunctionalInterface
interface Mover {

  /** By one rename, which a reader sees wholly or not at all. */
  Mover ATOMIC =
      (from, to) -> {
        try {
          Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException notHere) {
          Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
      };

  void move(Path from, Path to) throws IOException;
}
