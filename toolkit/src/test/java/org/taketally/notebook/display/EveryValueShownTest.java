package org.taketally.notebook.display;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.taketally.analysis.Analysis;
import org.taketally.answers.Answer;
import org.taketally.model.PlannedLot;
import org.taketally.notebook.kernel.engine.output.Rendering;
import org.taketally.plan.layout.LayoutPlan;
import org.taketally.plan.layout.TrialLayout;
import org.taketally.plan.size.TrialQuestion;
import org.taketally.plan.size.TrialSize;
import org.taketally.plan.size.TrialUnits;
import org.taketally.records.CropProfiles;
import org.taketally.records.GraftRecords;
import org.taketally.records.RecordsReader;
import org.taketally.watch.SeasonLots;
import org.taketally.watch.SeasonWatch;
import org.taketally.watch.WatchedSeason;

/**
 * Every value that can be reached from the doors of the toolkit by questions without arguments is
 * shown readably as the last value of a cell.
 */
class EveryValueShownTest {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root"));
  private static final String OURS = "org.taketally.";

  /** Addresses in memory, what holds a value, records as Java writes them, and no value at all. */
  private static final Pattern DUMP =
      Pattern.compile(
          "Optional(?:Double|Int|Long)?\\[|@[0-9a-f]{5,8}\\b|\\b[A-Z]\\w+\\[\\w+=|can be asked");

  private static final int LONGEST = 12_000;

  /** All answers together, with their reasons and tables. */
  private static final int LONGEST_OF_ANSWERS = 80_000;

  private static final int LINE = 5_000;
  private static final int EACH_KIND = 3;

  private final Rendering rendering = new Rendering(Displays::register, svg -> new byte[0]);
  private final Map<String, Integer> seen = new HashMap<>();
  private final Map<String, String> unreadable = new TreeMap<>();
  private final Set<String> kinds = new TreeSet<>();
  private final Deque<Found> open = new ArrayDeque<>();

  /** A value, and how one comes to it. */
  private record Found(String way, Object value) {}

  @Test
  void no_value_is_shown_as_a_dump() throws Exception {
    doors().forEach((name, value) -> open.add(new Found(name, value)));
    while (!open.isEmpty()) {
      visit(open.poll());
    }
    assertThat(kinds)
        .contains("Analysis", "TakeFit", "GraftRecords", "RootstockVerdict", "Confounding")
        .contains("TakeDraws", "Estimate", "Interval", "LotPrediction", "Provenance")
        .contains("TrialSize", "TrialLayout", "WatchedSeason");
    assertThat(unreadable).isEmpty();
  }

  private static Map<String, Object> doors() throws Exception {
    GraftRecords records =
        RecordsReader.defaults()
            .withCrop(CropProfiles.named("walnut"))
            .readFolder(ROOT.resolve("datasets/halden-bay-walnut"), "grafts-2025.csv");
    Analysis analysis = Analysis.of(records);
    Map<String, Object> doors = new TreeMap<>();
    doors.put("records", records);
    doors.put("analysis", analysis);
    doors.put("draws", analysis.fit().draws(200, 1));
    doors.put("forecast", analysis.fit().predict(PlannedLot.any()));
    doors.putAll(plans());
    doors.put("watched", watched(records));
    return doors;
  }

  private static Map<String, Object> plans() {
    var question = TrialQuestion.of(0.8, 0.7).withMargin(0.1);
    TrialLayout layout =
        TrialLayout.of(
            LayoutPlan.of(
                    List.of("Orrin", "Velmar"),
                    List.of("Halden seedling", "Pellin"),
                    List.of("Ines", "Bram"),
                    List.of("day 1", "day 2"))
                .withGraftsPerPlot(10));
    return Map.of(
        "size", TrialSize.of(question, TrialUnits.beds(20, 0.09).atMost(4)),
        "question", question,
        "layout", layout);
  }

  /** The season of the records, watched by the records themselves: enough to see every value. */
  private static WatchedSeason watched(GraftRecords records) {
    return SeasonWatch.of(SeasonLots.of(records), records, new SeasonWatch.Settings(2, 0.2, 1));
  }

  private void visit(Found found) {
    Object value = found.value();
    look(found);
    if (value instanceof Optional<?> held) {
      held.ifPresent(each -> add(found.way(), each));
    } else if (value instanceof Collection<?> items) {
      items.stream().limit(EACH_KIND).forEach(each -> add(found.way() + "[]", each));
    } else if (value instanceof Map<?, ?> map) {
      map.values().stream().limit(EACH_KIND).forEach(each -> add(found.way() + "{}", each));
    } else if (isOurs(value.getClass())) {
      kinds.add(value.getClass().getSimpleName());
      questions(value.getClass()).forEach(question -> ask(found, question));
    }
  }

  private void look(Found found) {
    String text = rendering.of(found.value()).plainText();
    boolean endless =
        text.length() > longest(found.value()) || text.lines().anyMatch(l -> l.length() > LINE);
    if (DUMP.matcher(text).find() || endless) {
      String start = text.length() > 160 ? text.substring(0, 160) + "..." : text;
      unreadable.put(found.way(), text.length() + " characters: " + start);
    }
  }

  private static int longest(Object value) {
    Object held = value instanceof Optional<?> optional ? optional.orElse(null) : value;
    boolean answers =
        held instanceof Answer
            || (held instanceof Collection<?> all
                && all.stream().allMatch(Answer.class::isInstance));
    return answers ? LONGEST_OF_ANSWERS : LONGEST;
  }

  private void ask(Found found, Method question) {
    try {
      add(found.way() + "." + question.getName(), question.invoke(found.value()));
    } catch (ReflectiveOperationException refused) {
      // an answer that this value doesn't have
    }
  }

  /** Each way by which a kind of value is reached, a few times. */
  private void add(String way, Object value) {
    if (value == null || value instanceof CharSequence || value instanceof Number) {
      return;
    }
    String kind = value.getClass().getName() + " " + way.substring(way.lastIndexOf('.') + 1);
    if (seen.merge(kind, 1, Integer::sum) <= EACH_KIND) {
      open.add(new Found(way, value));
    }
  }

  private static boolean isOurs(Class<?> type) {
    return type.getName().startsWith(OURS);
  }

  private static List<Method> questions(Class<?> type) {
    List<Method> all = new ArrayList<>();
    for (Method method : type.getMethods()) {
      if (method.getParameterCount() == 0
          && method.getReturnType() != void.class
          && isOurs(method.getDeclaringClass())
          && Modifier.isPublic(method.getDeclaringClass().getModifiers())
          && !Modifier.isStatic(method.getModifiers())
          && !method.getName().matches("hashCode|toString|with[A-Z].*")) {
        all.add(method);
      }
    }
    all.sort(Comparator.comparing(Method::getName));
    return all;
  }
}
