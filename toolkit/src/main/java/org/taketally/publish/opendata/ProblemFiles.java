package org.taketally.publish.opendata;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.taketally.files.FileNames;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsCheck;
import org.taketally.records.problems.ProblemSummary;
import org.taketally.terms.Problem;
import org.taketally.terms.Severity;
import org.taketally.wording.opendata.FileWords;
import org.taketally.wording.opendata.Heading;

/** What is wrong with the records, and the rows that couldn't be used. */
final class ProblemFiles {

  private static final String PROBLEMS = "problems.csv";

  private ProblemFiles() {}

  /** Every problem where names may go out; else how many of each kind, because words hold names. */
  static PackageFile problems(RecordsCheck check, boolean named) {
    return named ? everyProblem(check) : counted(check);
  }

  private static PackageFile counted(RecordsCheck check) {
    List<List<String>> lines = new ArrayList<>();
    for (ProblemSummary.Group group : check.summary().groups()) {
      lines.add(
          List.of(
              word(group.severity()),
              group.kind().plural(),
              FileNames.withoutFolder(group.file()),
              group.column(),
              Long.toString(group.count())));
    }
    return PackageFile.table(PROBLEMS, FileWords.PROBLEM_COUNTS, lines);
  }

  private static PackageFile everyProblem(RecordsCheck check) {
    List<List<String>> lines = new ArrayList<>();
    for (Problem problem : check.problems()) {
      lines.add(
          List.of(
              word(problem.severity()),
              FileNames.withoutFolder(problem.file()),
              problem.line() > 0 ? Long.toString(problem.line()) : "",
              problem.column(),
              problem.found(),
              problem.expected(),
              problem.remedy()));
    }
    return PackageFile.table(PROBLEMS, FileWords.PROBLEMS, lines);
  }

  private static String word(Severity severity) {
    return severity.name().toLowerCase(Locale.ROOT);
  }

  static PackageFile setAside(GraftRecords read) {
    List<String> names = new ArrayList<>(read.setAside().header());
    names.addAll(
        List.of("set_aside_extra", "set_aside_file", "set_aside_line", "set_aside_reasons"));
    List<Heading> headings =
        names.stream().map(name -> new Heading(name, FileWords.asTyped())).toList();
    return PackageFile.table(
        "set-aside.csv",
        FileWords.SET_ASIDE.title(),
        read.setAside().csv(),
        TableFields.texts(headings));
  }
}
