package org.taketally.app;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.Callable;
import org.taketally.records.CropProfiles;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Prints a crop profile to start one of your own from. */
@Command(
    name = "template",
    mixinStandardHelpOptions = true,
    description = {
      "Prints a crop profile to start your own from: change its values and sources, then name it"
          + " with --crop.",
      "Example: taketally crop template --like apple --out quince.csv"
    })
final class CropTemplateCommand implements Callable<Integer> {

  @Option(
      names = "--like",
      paramLabel = "CROP",
      defaultValue = "avocado",
      description = "The profile whose values it starts with (${DEFAULT-VALUE}).")
  private String like;

  @Mixin private TextOut out = new TextOut();

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    RecordsOptions.bundledCrop(spec.commandLine(), like);
    out.give(CropProfiles.template(like), List.of());
    return ExitStatus.FINE;
  }
}
