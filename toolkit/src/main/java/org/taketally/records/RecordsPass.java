package org.taketally.records;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.taketally.records.checks.PassRules;
import org.taketally.records.checks.RowTallies;
import org.taketally.records.checks.SheetNotes;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.dictionary.SheetRules;
import org.taketally.records.problems.Place;
import org.taketally.records.problems.Places;
import org.taketally.records.problems.ProblemLog;
import org.taketally.records.problems.ProblemSummary;
import org.taketally.records.problems.RecordsUnreadable;
import org.taketally.records.rows.Headings;
import org.taketally.records.rows.RecordRow;
import org.taketally.records.rows.RecordsLayout;
import org.taketally.records.rows.RepairedRows;
import org.taketally.records.rows.RowReport;
import org.taketally.records.rows.RowVisitor;
import org.taketally.records.rows.SetAsideShape;
import org.taketally.records.rows.SetAsideSink;
import org.taketally.records.rows.SheetReader;
import org.taketally.records.sources.RawRow;
import org.taketally.records.sources.RowFeed;
import org.taketally.records.sources.RowSource;
import org.taketally.records.sources.SameFiles;
import org.taketally.terms.Problem;
import org.taketally.terms.Provenance;

/**
 * One reading of all sources: every row is read, checked and either handed on or set aside. Tables
 * and cells are both made from what this hands on, so that they can't differ.
 */
final class RecordsPass implements PassRules.Sheets {

  private final SheetDictionary dictionary;
  private final List<RowSource> sources;
  private final PassRules rules;
  private final RecordsLayout layout;
  private final Places places;
  private final SetAsideShape shape;
  private final RepairedRows repaired;
  private final ProblemLog log = new ProblemLog();
  private final RowReport report = new RowReport(log);
  private final RowTallies tallies;
  private final List<Map<String, SheetReader>> readers = new ArrayList<>();
  private final List<SheetReader> alone = new ArrayList<>();
  private long read;
  private long kept;

  RecordsPass(
      SheetDictionary dictionary,
      List<RowSource> opened,
      PassRules rules,
      RecordsLayout layout,
      Places places) {
    this.dictionary = dictionary;
    this.rules = rules;
    this.layout = layout;
    this.places = places;
    SheetNotes notes = new SheetNotes(dictionary, log);
    this.sources = usable(SameFiles.once(opened, log), notes);
    this.shape = new SetAsideShape(sources);
    this.repaired = new RepairedRows(shape, sources);
    for (int i = 0; i < sources.size(); i++) {
      Map<String, SheetReader> ofSource = new HashMap<>();
      String name = sources.get(i).name();
      if (!shape.readsAgain(i)) {
        ofSource.put(name, reader(i, name, Set.of(), notes));
      }
      for (Map.Entry<String, Set<String>> sheet : shape.originalSheets(i).entrySet()) {
        ofSource.put(sheet.getKey(), reader(i, sheet.getKey(), sheet.getValue(), null));
      }
      readers.add(ofSource);
      alone.add(ofSource.get(name));
    }
    if (rules.usesAllColumns()) {
      notes.close();
    }
    this.tallies = new RowTallies(layout);
  }

  /** The sources without worksheets that hold something else than records. */
  private List<RowSource> usable(List<RowSource> opened, SheetNotes notes) {
    List<RowSource> usable = new ArrayList<>();
    Map<Path, RecordsUnreadable> refused = new LinkedHashMap<>();
    RecordsUnreadable first = null;
    boolean firstOfFolder = false;
    for (RowSource source : opened) {
      RecordsUnreadable why = source.mayBeLeftOut() ? whyNot(source) : null;
      if (why == null) {
        usable.add(source);
      } else {
        if (first == null || (firstOfFolder && !source.ofFolder())) {
          first = why;
          firstOfFolder = source.ofFolder();
        }
        if (!source.ofFolder()) {
          refused.putIfAbsent(source.path().orElseThrow(), why);
        }
        notes.leftOut(source, why);
      }
    }
    if (usable.isEmpty() && first != null) {
      throw first;
    }
    refused.forEach(
        (path, why) -> {
          if (usable.stream().noneMatch(one -> one.path().equals(Optional.of(path)))) {
            throw why;
          }
        });
    Set<Path> workbooks = new HashSet<>();
    for (RowSource source : opened) {
      if (source.sheet().isPresent() && workbooks.add(source.path().orElseThrow())) {
        notes.notRead(source, opened);
      }
    }
    return usable;
  }

  private RecordsUnreadable whyNot(RowSource source) {
    SheetRules sheet = dictionary.rules(source.name());
    try {
      rules.requireColumns(
          new Headings(source.name(), source.headings(), sheet, layout.ourNames(), Set.of()),
          sheet);
      return null;
    } catch (RecordsUnreadable why) {
      return pointed(source, sheet, why);
    }
  }

  private SheetReader reader(int number, String named, Set<String> blank, SheetNotes notes) {
    RowSource source = sources.get(number);
    SheetRules sheet = dictionary.rules(named);
    Headings headings =
        new Headings(source.name(), source.headings(), sheet, layout.ourNames(), blank);
    requireColumns(source, headings, sheet);
    if (notes != null) {
      notes.add(source.name(), headings, sheet);
    }
    SheetReader reader = new SheetReader(source, headings, sheet, layout);
    reader.survey().slips(source.name(), headings, log);
    return reader;
  }

  /** Refuses a sheet without needed columns, and says where its headings seem to stand. */
  private void requireColumns(RowSource source, Headings headings, SheetRules sheet) {
    try {
      rules.requireColumns(headings, sheet);
    } catch (RecordsUnreadable why) {
      throw pointed(source, sheet, why);
    }
  }

  private static RecordsUnreadable pointed(
      RowSource source, SheetRules sheet, RecordsUnreadable why) {
    long line = source.likelyHeadingRow();
    if (line <= 1 || line == sheet.headingRow()) {
      return why;
    }
    Problem problem = why.problem();
    return new RecordsUnreadable(
        new Problem(
            problem.severity(),
            problem.file(),
            problem.line(),
            problem.column(),
            problem.found(),
            problem.expected(),
            "line %d looks like the headings: say \"heading_row\": %d in the dictionary; if it isn't, %s"
                .formatted(line, line, problem.remedy())));
  }

  RecordsCheck run(RowVisitor visitor, SetAsideSink setAside) {
    rules.begin();
    setAside.begin(shape.header());
    visitor.begin(layout);
    RecordRow row = new RecordRow(layout.size());
    try (RowFeed feed = new RowFeed(sources);
        setAside) {
      int source = -1;
      for (RowFeed.Batch batch = feed.next(); !batch.last(); batch = feed.next()) {
        if (batch.source() != source) {
          rules.endSheet(log);
          source = batch.source();
          places.begin(sources.get(source).name());
        }
        for (RawRow raw : batch.rows()) {
          if (take(source, raw, row)) {
            visitor.row(row);
          } else {
            setAside.add(shape.row(source, sheet(source, raw).asTyped(raw), raw, report));
          }
        }
      }
      setAside.end();
    }
    return close();
  }

  private boolean take(int source, RawRow raw, RecordRow row) {
    read++;
    SheetReader sheet = sheet(source, raw);
    report.begin(new Place(sources.get(source).name(), raw.line()));
    row.clear();
    if (sheet.read(raw, row, report)) {
      rules.apply(row, sheet, report);
    }
    repaired.apply(source, raw, report);
    if (!report.hasErrors()) {
      rules.keep(row, sheet, report);
    }
    report.end();
    if (report.hasErrors()) {
      return false;
    }
    kept++;
    tallies.add(row, report.place());
    return true;
  }

  /** A row set aside once already is read by the rules of the file it came from. */
  private SheetReader sheet(int source, RawRow raw) {
    return shape.readsAgain(source)
        ? readers.get(source).get(shape.sheet(source, raw))
        : alone.get(source);
  }

  private RecordsCheck close() {
    if (read == 0) {
      throw SheetNotes.noRows(sources);
    }
    List<String> names = sources.stream().map(RowSource::name).toList();
    rules.endSheet(log);
    rules.close(this, String.join(", ", names), log);
    SheetNotes.ownColumns(layout, names.get(0), log);
    SameFiles.check(sources, log);
    return new RecordsCheck(
        log.problems(),
        ProblemSummary.of(log),
        new Provenance(names, read, read - kept),
        tallies.grafts(),
        tallies.takes(),
        tallies.columns(kept),
        tallies.seasons(),
        tallies.sites(),
        batches());
  }

  private List<String> batches() {
    Set<String> all = new LinkedHashSet<>();
    readers.forEach(ofSource -> ofSource.values().forEach(r -> all.addAll(r.rules().batches())));
    return List.copyOf(all);
  }

  @Override
  public String heading(String file, RecordColumn column) {
    for (int i = 0; i < sources.size(); i++) {
      if (sources.get(i).name().equals(file) && readers.get(i).containsKey(file)) {
        return readers.get(i).get(file).heading(column);
      }
    }
    return column.columnName();
  }

  @Override
  public Map<String, String> spellings(RecordColumn column) {
    Map<String, String> all = new LinkedHashMap<>();
    for (Map<String, SheetReader> ofSource : readers) {
      ofSource.values().forEach(sheet -> all.putAll(sheet.spellings(column)));
    }
    return all;
  }
}
