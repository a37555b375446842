package org.taketally.wording.opendata;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.taketally.records.RecordsCheck;
import org.taketally.terms.Plural;

/** What a package says of itself: its description, the page beside the data, how it is cited. */
public final class PackageWords {

  private PackageWords() {}

  /**
   * A file of the package.
   *
   * @param name in the folder
   * @param title what it holds
   */
  public record File(String name, String title) {}

  /**
   * What the page beside the data is about.
   *
   * @param title what the data are
   * @param creators who made the records or answers for them
   * @param licence under which they may be passed on
   * @param named whether grafters' names, notes and rows set aside go out
   * @param repeatedCounts name of the file of repeated counts, empty if there is none
   * @param seed of everything random
   */
  public record About(
      String title,
      List<String> creators,
      OpenLicence licence,
      boolean named,
      String repeatedCounts,
      long seed) {
    public About {
      creators = List.copyOf(creators);
    }
  }

  /**
   * The counts of the records.
   *
   * @param check of all rows read
   * @return a sentence
   */
  public static String description(RecordsCheck check) {
    return String.format(
        Locale.ROOT,
        "Records of %s, %,d of which took; %s read = %,d kept + %,d set aside.",
        Plural.of(check.grafts(), "assessed graft"),
        check.takes(),
        Plural.of(check.provenance().rowsRead(), "row"),
        check.provenance().rowsKept(),
        check.provenance().rowsSetAside());
  }

  /**
   * What others may look for.
   *
   * @return words
   */
  public static List<String> keywords() {
    return List.of("grafting", "take", "rootstock", "cultivar");
  }

  /**
   * What whoever uses the records is asked for.
   *
   * @return a sentence
   */
  public static String cite() {
    return "If you use these records, please cite them as below.";
  }

  /**
   * The page beside the data.
   *
   * @param about what it says of the package
   * @param check of all rows read
   * @param files in the order they are listed
   * @return Markdown
   */
  public static String readme(About about, RecordsCheck check, List<File> files) {
    String list =
        files.stream()
            .map(file -> "| " + file.name() + " | " + file.title() + " |\n")
            .collect(Collectors.joining());
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
            about.title(),
            description(check),
            about.licence().id(),
            about.licence().url(),
            String.join(", ", about.creators()),
            list,
            about.repeatedCounts().isEmpty() ? "" : " --assessments " + about.repeatedCounts(),
            about.seed(),
            grafters(about.named()));
  }

  private static String grafters(boolean named) {
    return named
        ? "Grafters stand in it by name."
        : "Grafters are numbered in the order they first come; notes and rows set aside"
            + " were left out. Labels, sites and days may still tell who it was.";
  }
}
