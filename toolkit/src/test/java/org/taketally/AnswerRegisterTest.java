package org.taketally;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import com.tngtech.archunit.core.domain.JavaClass;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.taketally.analysis.AnswerRegister;
import org.taketally.answers.Answer;
import org.taketally.answers.Question;
import org.taketally.figure.AnswerFigures;
import org.taketally.wording.AnswerColumn;
import org.taketally.wording.QuestionWords;
import org.taketally.wording.Wording;

/** Walks the register of answers: each line has all its forms, and each column its entry. */
class AnswerRegisterTest {

  private static final Path ROOT = Path.of(System.getProperty("taketally.root", ".."));

  @ParameterizedTest
  @EnumSource(AnswerRegister.class)
  void each_answer_has_words_a_figure_and_a_key(AnswerRegister line) throws IOException {
    assertThat(Wording.knows(line.kind())).as("words of " + line.kind().getSimpleName()).isTrue();
    assertThat(AnswerFigures.has(line.kind()))
        .as("figures of " + line.kind().getSimpleName())
        .isTrue();
    assertThat(QuestionWords.of(line.question(), "rootstock")).isNotBlank();
    assertThat(line.key()).matches("[a-z]+([A-Z][a-z]+)*");
    String documented = Files.readString(ROOT.resolve("docs/commands.md"));
    assertThat(documented).as("key in docs/commands.md").contains("`" + line.key() + "`");
  }

  /** One pattern for all: {@code X} holds the values, {@code XCalculator} beside it finds them. */
  @Test
  void each_answer_has_its_calculator_and_never_calls_it() {
    List<JavaClass> answers =
        ToolkitClasses.in("org.taketally.answers").stream()
            .filter(type -> type.isAssignableTo(Answer.class) && !type.isInterface())
            .toList();
    assertThat(answers).hasSizeGreaterThan(AnswerRegister.values().length);
    for (JavaClass answer : answers) {
      String calculator = answer.getName() + "Calculator";
      assertThat(answer.reflect().isRecord()).as(answer.getName()).isTrue();
      assertThatCode(() -> Class.forName(calculator)).doesNotThrowAnyException();
      assertThat(answer.getDirectDependenciesFromSelf())
          .as(answer.getName())
          .noneMatch(needs -> needs.getTargetClass().getName().startsWith(calculator));
    }
  }

  @Test
  void keys_questions_and_kinds_are_told_apart() {
    AnswerRegister[] all = AnswerRegister.values();
    assertThat(Arrays.stream(all).map(AnswerRegister::key)).doesNotHaveDuplicates();
    assertThat(Arrays.stream(all).map(AnswerRegister::kind)).doesNotHaveDuplicates();
    assertThat(Arrays.stream(all).map(AnswerRegister::question)).doesNotHaveDuplicates();
  }

  /** The first look at counts is asked for by column, so an analysis has no line for it. */
  @Test
  void each_question_is_answered_somewhere() {
    Set<Question> answered =
        Arrays.stream(AnswerRegister.values())
            .map(AnswerRegister::question)
            .collect(Collectors.toCollection(() -> EnumSet.noneOf(Question.class)));
    assertThat(EnumSet.complementOf(EnumSet.copyOf(answered))).containsExactly(Question.COUNTS);
  }

  @ParameterizedTest
  @EnumSource(AnswerColumn.class)
  void each_column_of_a_table_is_in_the_glossary(AnswerColumn column) throws IOException {
    assertThat(Files.readString(ROOT.resolve("docs/answer-columns.md")))
        .contains("| `" + column.columnName() + "` |");
  }
}
