package org.taketally.records;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.taketally.records.columns.CommonWords;
import org.taketally.records.columns.DittoMarks;
import org.taketally.records.columns.NameLikeness;
import org.taketally.records.columns.RecordColumn;

/** Proposes what the words of a column mean that takes a few words only, such as outcomes. */
final class ProposedSpellings {

  private final ProposedSheet sheet;

  ProposedSpellings(ProposedSheet sheet) {
    this.sheet = sheet;
  }

  /** Adds common words to the entry of a column; asks of others. */
  void propose(RecordColumn column, String heading, SheetValues values, JsonObject entry) {
    Map<String, Set<String>> same = new LinkedHashMap<>();
    values
        .all()
        .forEach(
            (text, count) -> {
              if (!isOurs(column, text)
                  && !DittoMarks.isDitto(text)) { // those are asked about once
                Optional<String> means = CommonWords.value(column.columnName(), text);
                means.ifPresentOrElse(
                    meant -> same.computeIfAbsent(meant, m -> new LinkedHashSet<>()).add(text),
                    () -> ask(column, heading, text, count));
              }
            });
    if (!same.isEmpty()) {
      JsonObject json = new JsonObject();
      same.forEach((meant, texts) -> json.add(meant, OpenQuestion.list(texts)));
      entry.add("same", json);
      sheet.because(
          "words under \"%s\" are common ones for %s", heading, String.join(", ", same.keySet()));
    }
  }

  private static boolean isOurs(RecordColumn column, String text) {
    String plain = NameLikeness.plain(text);
    return column.allowed().stream().anyMatch(ours -> NameLikeness.plain(ours).equals(plain));
  }

  private void ask(RecordColumn column, String heading, String text, int count) {
    List<String> meanings = likeliestFirst(text, column.allowed());
    OpenQuestion question =
        sheet.ask(
            "\"%s\" stands under \"%s\" %s and may mean %s; add it under \"same\" of %s",
            text,
            heading,
            OpenQuestion.times(count),
            String.join(" or ", meanings),
            column.columnName());
    for (String meant : meanings) {
      question.choice(
          words(column, meant),
          OpenQuestion.list(Set.of(text)),
          "columns",
          column.columnName(),
          "same",
          meant);
    }
  }

  private static List<String> likeliestFirst(String text, List<String> allowed) {
    List<String> ordered = new ArrayList<>(allowed);
    ordered.sort(Comparator.comparing((String ours) -> !NameLikeness.mayBeOne(text, ours)));
    return ordered;
  }

  private static String words(RecordColumn column, String meant) {
    return column != RecordColumn.OUTCOME
        ? meant
        : switch (meant) {
          case "taken" -> "taken: it took; a later loss isn't counted";
          case "failed" -> "failed: not alive when it was counted last";
          default -> meant + ": nobody can say";
        };
  }
}
