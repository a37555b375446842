package org.taketally.app;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import org.taketally.records.CropProfiles;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Prints a crop profile to start one of your own from. */
@Command(
    name = "template",
    mixinStandardHelpOptions = true,
    description =
        "Prints a crop profile to start your own from, e.g. taketally crop template --like apple >"
            + " quince.csv; change its values and sources, then use it with --crop quince.csv.")
final class CropTemplateCommand implements Callable<Integer> {

  @Option(
      names = "--like",
      paramLabel = "CROP",
      defaultValue = "avocado",
      description = "The profile whose values it starts with (${DEFAULT-VALUE}).")
  private String like;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    RecordsOptions.bundledCrop(spec.commandLine(), like);
    PrintWriter out = spec.commandLine().getOut();
    out.print(CropProfiles.template(like));
    out.flush();
    return ExitStatus.FINE;
  }
}
