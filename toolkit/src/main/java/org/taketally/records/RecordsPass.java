package org.taketally.records;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.taketally.terms.Provenance;

/**
 * One reading of all sources: every row is read, checked and either handed on or set aside. Tables
 * and cells are both made from what this hands on, so that they can't differ.
 */
final class RecordsPass implements PassRules.Sheets {

  private final Dictionary dictionary;
  private final List<RowSource> sources;
  private final PassRules rules;
  private final RecordsLayout layout;
  private final Places places;
  private final SetAsideShape shape;
  private final ProblemLog log = new ProblemLog();
  private final RowReport report = new RowReport(log);
  private final RowTallies tallies;
  private final List<Map<String, SheetReader>> readers = new ArrayList<>();
  private long read;
  private long kept;

  RecordsPass(
      Dictionary dictionary,
      List<RowSource> sources,
      PassRules rules,
      RecordsLayout layout,
      Places places) {
    this.dictionary = dictionary;
    this.sources = sources;
    this.rules = rules;
    this.layout = layout;
    this.places = places;
    this.shape = new SetAsideShape(sources);
    SheetNotes notes = new SheetNotes(dictionary, log);
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
    }
    notes.close();
    this.tallies = new RowTallies(layout);
  }

  private SheetReader reader(int number, String named, Set<String> blank, SheetNotes notes) {
    RowSource source = sources.get(number);
    SheetRules sheet = dictionary.rules(named);
    Headings headings =
        new Headings(source.name(), source.headings(), sheet, layout.ourNames(), blank);
    rules.requireColumns(headings, sheet);
    if (notes != null) {
      notes.add(source.name(), headings, sheet);
    }
    return new SheetReader(source, headings, sheet, layout);
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
    return readers.get(source).get(shape.sheet(source, raw));
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
        tallies.sites());
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
