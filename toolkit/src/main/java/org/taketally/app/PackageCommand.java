package org.taketally.app;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.taketally.analysis.Analysis;
import org.taketally.files.FileNames;
import org.taketally.files.FileSet;
import org.taketally.publish.opendata.DataPackage;
import org.taketally.publish.opendata.OpenRecords;
import org.taketally.publish.opendata.PackageOptions;
import org.taketally.records.Assessments;
import org.taketally.records.GraftRecords;
import org.taketally.records.columns.KnownColumns;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.wording.opendata.OpenLicence;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Writes records and answers as open data. */
@Command(
    name = "package",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description =
        "Writes records and answers as a Data Package others can read: our columns, how to read"
            + " them back, problems, answers, checksums, licence, citation.")
final class PackageCommand implements Callable<Integer> {

  @Mixin private RecordsOptions input;
  @Mixin private ModelOptions choices;
  @Mixin private OutFolder out;
  @Spec private CommandSpec spec;

  @Option(
      names = "--title",
      paramLabel = "WORDS",
      required = true,
      description = "What the data are, e.g. \"Halden Bay avocado grafts 2022 to 2025\".")
  private String title;

  @Option(
      names = "--by",
      paramLabel = "NAME",
      required = true,
      description = "Who made the records or answers for them; may be repeated.")
  private List<String> creators = new ArrayList<>();

  @Option(
      names = "--licence",
      paramLabel = "LICENCE",
      required = true,
      description =
          "Terms under which others may pass the data on: CC0-1.0, CC-BY-4.0, CC-BY-SA-4.0,"
              + " PDDL-1.0, ODC-By-1.0 or ODbL-1.0.")
  private String licence;

  @Option(
      names = "--names",
      description =
          "Let grafters' names, notes and rows set aside go out as they are (else grafters are"
              + " numbered, the others stay behind).")
  private boolean names;

  @Option(
      names = "--country",
      paramLabel = "CODE",
      description = "Country of the sites, two letters of ISO 3166.")
  private String country;

  @Option(
      names = "--organism",
      paramLabel = "SPECIES",
      description = "Species of the scions, e.g. \"Persea americana\".")
  private String organism;

  @Override
  public Integer call() throws IOException {
    OpenLicence terms =
        OpenLicence.of(licence)
            .orElseThrow(
                () ->
                    new ParameterException(
                        spec.commandLine(),
                        "found licence \"%s\", expected one of %s"
                            .formatted(licence, String.join(", ", OpenLicence.ids()))));
    FileSet files = out.files("package", input.files());
    files.requireFree("datapackage.json", "records.csv");
    GraftRecords read = input.read();
    input.report(read.check());
    Optional<Assessments> counts = input.assessments(read);
    OpenRecords open = OpenRecords.of(read, names);
    Analysis analysis =
        AnalyseCommand.analysis(open.records(), choices, false, new ArrayList<>(), Set.of());
    if (counts.isPresent()) {
      analysis = analysis.withLateLoss(open.records(), counts.get());
    }
    DataPackage made = DataPackage.of(read, open, analysis, options(terms));
    if (counts.isPresent()) {
      made.with(counts.get(), open);
    }
    made.files().forEach(files::add);
    say(open, files.write());
    return ExitStatus.FINE;
  }

  private PackageOptions options(OpenLicence terms) throws IOException {
    Optional<Path> dictionary = input.dictionary();
    return new PackageOptions(
        title,
        creators,
        terms,
        names,
        new PackageOptions.Origin(
            new Version().getVersion()[0].replace("taketally ", ""),
            typed(),
            choices.answers().seed(),
            input.crop(),
            dictionary.isPresent()
                ? Optional.of(SheetDictionary.text(dictionary.get()))
                : Optional.empty(),
            LocalDate.now(ZoneId.systemDefault())),
        new PackageOptions.Place(Optional.ofNullable(country), Optional.ofNullable(organism)));
  }

  /** What was typed, of files their names alone: the folders are nobody's business. */
  private List<String> typed() {
    List<String> typed = new ArrayList<>();
    for (String argument : spec.commandLine().getParseResult().originalArgs()) {
      boolean place =
          argument.startsWith("--out=") || typed.lastIndexOf("--out") == typed.size() - 1;
      if (place && !typed.isEmpty()) {
        typed.removeIf("--out"::equals);
      } else {
        boolean file = argument.contains(java.io.File.separator) || argument.contains("/");
        typed.add(file ? FileNames.withoutFolder(argument) : argument);
      }
    }
    return typed;
  }

  private void say(OpenRecords open, List<Path> written) {
    Printing printing = new Printing(spec.commandLine().getOut());
    printing.paragraphs(
        "Written: %d files, described in %s".formatted(written.size(), written.get(0)));
    List<String> own =
        open.records().frame().columnNames().stream()
            .filter(name -> !KnownColumns.isKnown(name) && !KnownColumns.isWorkedOut(name))
            .toList();
    if (!own.isEmpty()) {
      printing.paragraphs(
          "Columns of your own go out too: %s. Leave one out with \"ignore\" in the dictionary."
              .formatted(String.join(", ", own)));
    }
    printing.paragraphs(
        names
            ? "Grafters' names, notes and rows set aside go out as they are: ask those named first."
            : "Grafters are numbered; notes and rows set aside stay behind. Labels, sites and days"
                + " may still tell who it was: ask your members before you publish.");
  }
}
