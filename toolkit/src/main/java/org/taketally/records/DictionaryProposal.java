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
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;
import org.taketally.records.dictionary.SheetDictionary;
import org.taketally.records.sources.RowSource;
import org.taketally.records.sources.SourceFiles;

/**
 * A dictionary proposed for sheets as they are kept: what each entry rests on, and what could not
 * be decided. A proposal is for a person to read and change; nothing is ever read by it unasked.
 */
public final class DictionaryProposal {

  private static final int ENOUGH = 2;

  private final JsonObject json = new JsonObject();
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
      for (RowSource source : SourceFiles.open(List.of(file), SheetDictionary.none())) {
        boolean alone = files.size() == 1 && source.name().equals(file.toString());
        JsonObject rules = alone ? proposal.json : new JsonObject();
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

  private static String key(Path file, RowSource source) {
    String name = file.getFileName().toString();
    return source.sheet().isPresent() && !source.name().equals(file.toString())
        ? name + ", sheet " + source.sheet().get()
        : name;
  }

  /** What is proposed for one sheet. */
  private void sheet(Path file, RowSource found, JsonObject rules) {
    RowSource source = found;
    long line =
        found.headings().stream().filter(DictionaryProposal::known).count() < ENOUGH
            ? found.likelyHeadingRow()
            : 0;
    if (line > 1) {
      rules.addProperty("heading_row", line);
      reasons.add("%s: line %d looks like the headings".formatted(found.name(), line));
      source = below(file, found, line);
    }
    Map<String, String> headings = headings(source, rules);
    ProposedColumns columns = new ProposedColumns(source, headings, reasons, questions);
    columns.addTo(rules);
  }

  private static RowSource below(Path file, RowSource found, long line) {
    SheetDictionary dictionary =
        SheetDictionary.parse("proposal", "{\"heading_row\": %d}".formatted(line));
    return SourceFiles.open(List.of(file), dictionary).stream()
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
    if (open.contains(RecordColumn.TAKES.columnName())
        || open.contains(RecordColumn.OUTCOME.columnName())) {
      open.clear();
      open.add(SheetValues.of(source, heading).result());
      open.removeAll(found.keySet());
    }
    if (open.size() == 1) {
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
