package org.taketally.app;

import picocli.CommandLine.Option;

/** Where random numbers start, for every command that draws some. */
final class SeedOption {

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Seed of everything random; the same seed gives the same result.")
  private long seed = 1; // also where nothing is typed, as in the demo

  long value() {
    return seed;
  }
}
