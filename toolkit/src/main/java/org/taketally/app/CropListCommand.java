package org.taketally.app;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import org.taketally.records.CropProfiles;
import org.taketally.terms.CropProfile;
import org.taketally.terms.CropProfile.Item;
import org.taketally.terms.CropProfile.Value;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says which crop profiles there are, or what one of them says and where it has it from. */
@Command(
    name = "list",
    mixinStandardHelpOptions = true,
    description =
        "Lists the crop profiles, or what one of them says, with the source of each value.")
final class CropListCommand implements Callable<Integer> {

  @Parameters(arity = "0..1", paramLabel = "CROP", description = "One of the names listed.")
  private String crop;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    if (crop == null) {
      CropProfiles.names().forEach(name -> out.println(line(CropProfiles.named(name))));
    } else {
      values(RecordsOptions.bundledCrop(spec.commandLine(), crop), out);
    }
    out.flush();
    return ExitStatus.FINE;
  }

  private static String line(CropProfile profile) {
    return "%-10s budwood %s to %s °C, best within %s days; takes counted from day %s, final from %s"
        .formatted(
            profile.crop(),
            profile.words(Item.STORAGE_TEMP_MIN),
            profile.words(Item.STORAGE_TEMP_MAX),
            profile.words(Item.STORAGE_DAYS_BEST),
            profile.words(Item.ASSESS_EARLY),
            profile.words(Item.ASSESS_FINAL));
  }

  private static void values(CropProfile profile, PrintWriter out) {
    for (Item item : Item.values()) {
      Value value = profile.value(item).orElse(null);
      if (value != null) {
        String unit = item.isNumber() ? " " + item.unit() : "";
        out.println(
            "%-20s %-14s %s"
                .formatted(
                    item.name().toLowerCase(java.util.Locale.ROOT),
                    value.text() + unit,
                    value.source()));
      }
    }
  }
}
