package org.taketally.publish.opendata;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.taketally.records.RecordsCheck;

/** What a package says in words: README.md and CITATION.cff. */
final class PackageWords {

  private final PackageOptions options;
  private final RecordsCheck check;
  private final List<PackageFile> files;

  PackageWords(PackageOptions options, RecordsCheck check, List<PackageFile> files) {
    this.options = options;
    this.check = check;
    this.files = files;
  }

  static String description(RecordsCheck check) {
    return String.format(
        Locale.ROOT,
        "Records of %,d assessed grafts, %,d of which took; %,d rows read = %,d kept + %,d set"
            + " aside.",
        check.grafts(),
        check.takes(),
        check.provenance().rowsRead(),
        check.provenance().rowsKept(),
        check.provenance().rowsSetAside());
  }

  String readme() {
    String list =
        files.stream()
            .map(file -> "| %s | %s |%n".formatted(file.name(), file.title()).replace("\r", ""))
            .collect(Collectors.joining());
    boolean counts = files.stream().anyMatch(file -> file.name().equals("assessments.csv"));
    return """
    # %s

    %s

    **Licence**: %s (%s).

    **Who made it**: %s.

    | file | holds |
    |---|---|
    %s
    Columns, types, sizes and checksums of all files stand in `datapackage.json` (Data Package 2.0). `study.csv`, `germplasm.csv` and `observation-variables.csv` use the headings of MIAPPE 1.2; what nobody said is `Unreported`.

    ## Read it back

        taketally analyse records.csv --dictionary dictionary.json%s --seed %d

    gives the same answers (with the options under `provenance` in `datapackage.json`, if they name a model or a margin). %s

    ## What it can't say

    A take isn't a lasting union, nor yield. These are records of what was done, not of what would have been: what went with a take need not have caused it. Nothing here says that moving plant material, or propagating a protected cultivar, is allowed; ask the authority or the holder of the right.
    """
        .formatted(
            options.title(),
            description(check),
            options.licence().id(),
            options.licence().url(),
            String.join(", ", options.creators()),
            list,
            counts ? " --assessments assessments.csv" : "",
            options.origin().seed(),
            options.named()
                ? "Grafters stand in it by name."
                : "Grafters are numbered in the order they first come; notes and rows set aside"
                    + " were left out. Labels, sites and days may still tell who it was.");
  }

  String citation() {
    StringBuilder text =
        new StringBuilder(
            """
            cff-version: 1.2.0
            message: "If you use these records, please cite them as below."
            type: dataset
            title: %s
            version: 1.0.0
            date-released: "%s"
            license: %s
            keywords:
              - grafting
              - take
              - rootstock
            authors:
            """
                .formatted(
                    quoted(options.title()), options.origin().created(), options.licence().id()));
    options.creators().forEach(name -> text.append("  - name: ").append(quoted(name)).append("\n"));
    return text.toString();
  }

  /** Text as YAML takes it, whatever it holds: a JSON string is one. */
  private static String quoted(String text) {
    return new com.google.gson.GsonBuilder().disableHtmlEscaping().create().toJson(text);
  }
}
