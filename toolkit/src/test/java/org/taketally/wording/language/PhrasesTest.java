package org.taketally.wording.language;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.taketally.terms.Interval;

class PhrasesTest {

  private static final Path MAIN =
      Path.of(System.getProperty("taketally.root", "..")).resolve("toolkit/src/main");

  private static Properties texts(Language language) throws IOException {
    Path file = MAIN.resolve("resources/org/taketally/wording/language");
    Properties texts = new Properties();
    try (Reader in = Files.newBufferedReader(file.resolve(language.code() + ".properties"))) {
      texts.load(in);
    }
    return texts;
  }

  /** Names of columns, levels and units are said by some languages only. */
  private static Set<String> keys(Properties texts) {
    return texts.stringPropertyNames().stream()
        .filter(key -> !key.matches("(column|level|unit)\\..*"))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Set<String> places(String text) {
    Matcher places = Pattern.compile("\\{(\\d)").matcher(text);
    return places.results().map(m -> m.group(1)).collect(Collectors.toCollection(TreeSet::new));
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void every_language_says_the_same_things(Language language) throws IOException {
    Properties english = texts(Language.ENGLISH);
    Properties texts = texts(language);

    assertThat(keys(texts)).isEqualTo(keys(english));
    for (String key : keys(texts)) {
      assertThat(places(texts.getProperty(key)))
          .as("values of %s in %s", key, language)
          .isEqualTo(places(english.getProperty(key)));
    }
  }

  @Test
  void every_text_is_used_somewhere() throws IOException {
    StringBuilder code = new StringBuilder();
    try (Stream<Path> files = Files.walk(MAIN.resolve("java/org/taketally/wording"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
        code.append(Files.readString(file));
      }
    }
    for (String key : keys(texts(Language.ENGLISH))) {
      String made = key.replaceFirst("\\.[^.]*$", ".");
      assertThat(code.indexOf('"' + key + '"') >= 0 || code.indexOf('"' + made + '"') >= 0)
          .as("a text nobody says: " + key)
          .isTrue();
    }
  }

  @Test
  void values_stand_where_the_text_wants_them() {
    Phrases english = Phrases.in(Language.ENGLISH);

    assertThat(english.say("took.all", 1L, 1L, "{0} $1 \\"))
        .isEqualTo("1 of 1 graft took, {0} $1 \\.");
    assertThat(english.say("took.all", 4782L, 12345L, "x"))
        .isEqualTo("4,782 of 12,345 grafts took, x.");
  }

  @Test
  void english_numbers_and_names() {
    Phrases english = Phrases.in(Language.ENGLISH);

    assertThat(english.percent(0.996)).isEqualTo("over 99 %");
    assertThat(english.points(new Interval(-0.03, 0.05, 0.95))).isEqualTo("-3 to +5 points");
    assertThat(english.amount(7.5, "days")).isEqualTo("7.5 days");
    assertThat(english.count(-1234567)).isEqualTo("-1,234,567");
    assertThat(english.list(List.of("A", "B", "C"))).isEqualTo("A, B and C");
    assertThat(english.either(List.of("A", "B"))).isEqualTo("A or B");
    assertThat(english.column("stock_condition")).isEqualTo("stock condition");
    assertThat(english.level("budwood_kept", "moist")).isEqualTo("moist");
  }

  @Test
  void spanish_numbers_and_names() {
    Phrases spanish = Phrases.in(Language.SPANISH);

    assertThat(spanish.count(4782)).isEqualTo("4782");
    assertThat(spanish.count(12345)).isEqualTo("12\u202f345");
    assertThat(spanish.percent(0.63)).isEqualTo("63\u00a0%");
    assertThat(spanish.amount(7.5, "days")).isEqualTo("7,5 días");
    assertThat(spanish.number(7.25)).isEqualTo("7,25");
    assertThat(spanish.list(List.of("Orrin", "Ivelle"))).isEqualTo("Orrin e Ivelle");
    assertThat(spanish.list(List.of("Orrin", "Hielo"))).isEqualTo("Orrin y Hielo");
    assertThat(spanish.list(List.of("Orrin", "Hijar"))).isEqualTo("Orrin e Hijar");
    assertThat(spanish.either(List.of("Ivelle", "Orrin"))).isEqualTo("Ivelle u Orrin");
    assertThat(spanish.column("rootstock × season")).isEqualTo("portainjerto × temporada");
    assertThat(spanish.level("budwood_kept", "moist")).isEqualTo("húmedas");
    assertThat(spanish.level("cultivar", "Orrin")).isEqualTo("Orrin");
  }
}
