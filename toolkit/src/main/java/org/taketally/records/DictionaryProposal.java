package org.taketally.records;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.sources.RawRow;
import org.taketally.records.sources.RowSource;
import org.taketally.records.sources.SourceFiles;
import org.taketally.records.sources.Trim;

/**
 * A dictionary proposed for sheets as they are kept: what each entry rests on, and what could not
 * be decided. A proposal is for a person to read and change; nothing is ever read by it unasked.
 */
public final class DictionaryProposal {

  private static final int ENOUGH = 2;
  private static final int TITLES = 10;
  private static final String GRAFTS = RecordColumn.GRAFTS.columnName();
  private static final String DAY = RecordColumn.GRAFT_DATE.columnName();
  private static final Pattern DEGREES =
      Pattern.compile(".*([°º]\\s*[CF]|\\btemp).*", Pattern.CASE_INSENSITIVE);

  private final JsonObject json = new JsonObject();
  private final Set<String> sheets = new LinkedHashSet<>();
  private final List<String> reasons = new ArrayList<>();
  private final List<OpenQuestion> questions = new ArrayList<>();

  private DictionaryProposal() {}

  /**
   * Looks at sheets and proposes how to read them.
   *
   * @param files CSV or XLSX files, at least one; each gets rules of its own under {@code files} if
   *     there are several
   * @return the proposal
   * @throws org.taketally.records.problems.RecordsUnreadable if a file can't be read at all
   */
  public static DictionaryProposal of(List<Path> files) {
    DictionaryProposal proposal = new DictionaryProposal();
    proposal.json.addProperty("about", "proposed, to be read and corrected by a person");
    JsonObject several = new JsonObject();
    for (Path file : files) {
      JsonObject base = new JsonObject();
      SourceFiles.encoding(file).ifPresent(name -> base.addProperty("encoding", name));
      for (RowSource source : open(file, base)) {
        proposal.sheets.add(source.name());
        boolean alone = files.size() == 1 && source.name().equals(file.toString());
        JsonObject rules = alone ? proposal.json : new JsonObject();
        proposal.encoding(source, base, rules);
        proposal.sheet(file, source, rules);
        if (!alone) {
          several.add(key(file, source), rules);
        }
      }
    }
    if (!several.isEmpty()) {
      proposal.json.add("files", several);
    }
    return proposal;
  }

  private static List<RowSource> open(Path file, JsonObject rules) {
    return SourceFiles.open(List.of(file), SheetDictionary.parse("proposal", rules.toString()));
  }

  private void encoding(RowSource source, JsonObject base, JsonObject rules) {
    if (base.has("encoding")) {
      String name = base.get("encoding").getAsString();
      rules.addProperty("encoding", name);
      reasons.add(
          "%s: its letters aren't in UTF-8 and are taken as %s, so that the headings read %s"
              .formatted(source.name(), name, String.join(", ", source.headings())));
    }
  }

  private static String key(Path file, RowSource source) {
    String name = file.getFileName().toString();
    return source.sheet().isPresent() && !source.name().equals(file.toString())
        ? name + ", sheet " + source.sheet().get()
        : name;
  }

  /** What is proposed for one sheet. */
  private void sheet(Path file, RowSource found, JsonObject rules) {
    RowSource source = found;
    long line = headingRow(found);
    if (line > 1) {
      rules.addProperty("heading_row", line);
      reasons.add("%s: line %d looks like the headings".formatted(found.name(), line));
      source = below(file, found, line, rules);
    }
    Map<String, String> headings = headings(source, rules);
    ProposedColumns columns = new ProposedColumns(source, headings, reasons, questions);
    columns.addTo(rules);
  }

  /** The line of the headings, where they aren't the first; 0 where they are. */
  private static long headingRow(RowSource found) {
    if (found.headings().stream().filter(DictionaryProposal::known).count() >= ENOUGH) {
      return 0;
    }
    return found.likelyHeadingRow() > 0 ? found.likelyHeadingRow() : belowTitle(found);
  }

  /** Below a first line with nothing but a title, the first line with several cells; or 0. */
  private static long belowTitle(RowSource found) {
    if (found.headings().stream().filter(heading -> !heading.isEmpty()).count() != 1) {
      return 0;
    }
    try (RowSource.Rows rows = found.open()) {
      RawRow row = rows.next();
      for (int i = 0; i < TITLES && row != null; i++) {
        long cells = Arrays.stream(row.fields()).filter(text -> !Trim.isBlank(text)).count();
        if (cells > ENOUGH) {
          return row.line();
        }
        row = rows.next();
      }
    }
    return 0;
  }

  private static RowSource below(Path file, RowSource found, long line, JsonObject rules) {
    JsonObject reading = new JsonObject();
    reading.addProperty("heading_row", line);
    if (rules.has("encoding")) {
      reading.add("encoding", rules.get("encoding"));
    }
    return open(file, reading).stream()
        .filter(source -> source.name().equals(found.name()))
        .findFirst()
        .orElse(found);
  }

  private static boolean known(String heading) {
    return ours(heading) != null || !CommonWords.columns(heading).isEmpty();
  }

  /** The column of ours that has this name, in whatever case and spacing; null if none has. */
  private static String ours(String heading) {
    String plain = NameLikeness.plain(heading);
    return Arrays.stream(RecordColumn.values())
        .map(RecordColumn::columnName)
        .filter(name -> NameLikeness.plain(name).equals(plain))
        .findFirst()
        .orElse(null);
  }

  /** Our column to the heading that seems to hold it. */
  private Map<String, String> headings(RowSource source, JsonObject rules) {
    Map<String, String> found = new LinkedHashMap<>();
    for (String heading : source.headings()) {
      String ours = ours(heading);
      if (ours != null) {
        found.putIfAbsent(ours, heading);
      }
    }
    for (String heading : source.headings()) {
      if (!found.containsValue(heading)) {
        meant(source, heading, found, rules);
      }
    }
    return found;
  }

  private void meant(
      RowSource source, String heading, Map<String, String> found, JsonObject rules) {
    Set<String> open = new LinkedHashSet<>(CommonWords.columns(heading));
    open.removeAll(found.keySet());
    if (open.contains(GRAFTS) && open.contains(DAY)) {
      open.remove(SheetValues.of(source, heading).mostly("\\d+") ? DAY : GRAFTS);
    }
    if (open.contains(RecordColumn.TAKES.columnName())
        || open.contains(RecordColumn.OUTCOME.columnName())) {
      open.clear();
      open.add(SheetValues.of(source, heading).result());
      open.removeAll(found.keySet());
    }
    String storage = RecordColumn.STORAGE_TEMP_C.columnName();
    if (open.isEmpty() && DEGREES.matcher(heading).matches() && !found.containsKey(storage)) {
      questions.add(
          new OpenQuestion(
                  "%s: \"%s\" may be the temperature the budwood was kept at; add \"%s\": \"%s\" under \"columns\" if it is"
                      .formatted(source.name(), heading, storage, heading),
                  rules)
              .choice("kept at that", new JsonPrimitive(heading), "columns", storage)
              .choice("another temperature", new JsonObject()));
    } else if (open.size() == 1) {
      String name = open.iterator().next();
      found.put(name, heading);
      reasons.add("%s: \"%s\" is a common word for %s".formatted(source.name(), heading, name));
    } else if (open.size() > 1) {
      OpenQuestion question =
          new OpenQuestion(
              "%s: \"%s\" may be %s; add it under \"columns\""
                  .formatted(source.name(), heading, String.join(" or ", open)),
              rules);
      open.forEach(name -> question.choice(name, new JsonPrimitive(heading), "columns", name));
      questions.add(question);
    }
  }

  /**
   * The dictionary, as a file to be edited.
   *
   * @return JSON that {@link SheetDictionary#parse} reads
   */
  public String json() {
    JsonObject json = this.json.deepCopy();
    if (json.has("files")) {
      JsonObject files = json.getAsJsonObject("files");
      files.keySet().stream()
          .filter(name -> files.getAsJsonObject(name).isEmpty())
          .toList()
          .forEach(files::remove);
      if (files.isEmpty()) {
        json.remove("files");
      }
    }
    return new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create().toJson(json) + "\n";
  }

  /**
   * What the entries rest on.
   *
   * @return a sentence each
   */
  public List<String> reasons() {
    return List.copyOf(reasons);
  }

  /**
   * The sheets looked at, as they are named at the start of a reason and of a question.
   *
   * @return files, or worksheets of workbooks
   */
  public List<String> sheets() {
    return List.copyOf(sheets);
  }

  /**
   * What could not be decided, with the readings there are.
   *
   * @return a sentence each; empty if nothing is open
   */
  public List<String> questions() {
    return open().stream().map(OpenQuestion::sentence).toList();
  }

  /**
   * What could not be decided and isn't settled yet, to be asked one by one.
   *
   * @return questions with their choices; settling one changes {@link #json()}
   */
  public List<OpenQuestion> open() {
    return questions.stream().filter(question -> !question.settled()).toList();
  }
}
