package org.taketally.publish;

import java.util.List;
import org.taketally.wording.AnswerTable;

/**
 * A piece of a page. The templates know each kind by the name of its only component; each block
 * answers for all names, so that no template looks further out for one.
 */
sealed interface Block {

  default String paragraph() {
    return null;
  }

  default String callout() {
    return null;
  }

  default String caution() {
    return null;
  }

  default Points bullets() {
    return null;
  }

  default Drawing figure() {
    return null;
  }

  default Grid grid() {
    return null;
  }

  default String answerTable() {
    return null;
  }

  default Section fold() {
    return null;
  }

  /** A sentence or a few. */
  record Paragraph(String paragraph) implements Block {}

  /** What to take home, set apart. */
  record Callout(String callout) implements Block {}

  /** A caution, set apart. */
  record Caution(String caution) implements Block {}

  /** Short points. */
  record Bullets(Points bullets) implements Block {
    static Bullets of(List<String> points) {
      return new Bullets(new Points(points));
    }
  }

  /** A figure laid out for wide and for narrow pages. */
  record Figure(Drawing figure) implements Block {}

  /** A small table in plain words. */
  record Table(Grid grid) implements Block {}

  /** A table of an answer, as the answers package writes it. */
  record Answers(String answerTable) implements Block {
    static Answers of(AnswerTable table) {
      return new Answers(table.toHtml());
    }
  }

  /** Something for those who want to know more, folded away. */
  record Fold(Section fold) implements Block {}

  /** Texts of a list. */
  record Points(List<String> points) {}

  /**
   * SVG in two layouts.
   *
   * @param wide for desks and paper
   * @param narrow for telephones
   */
  record Drawing(String wide, String narrow) {}

  /**
   * A table of texts.
   *
   * @param caption what the rows are
   * @param headings one per column; the first column holds names
   * @param rows one text per column
   * @param wordy whether columns hold sentences, to be broken and aligned as text
   */
  record Grid(String caption, List<String> headings, List<List<String>> rows, boolean wordy) {

    Grid(String caption, List<String> headings, List<List<String>> rows) {
      this(caption, headings, rows, false);
    }

    List<String> otherHeadings() {
      return headings.subList(1, headings.size());
    }

    String firstHeading() {
      return headings.get(0);
    }

    List<Row> lines() {
      return rows.stream().map(row -> new Row(row.get(0), row.subList(1, row.size()))).toList();
    }
  }

  /** A row of a {@link Grid}. */
  record Row(String name, List<String> values) {}

  /**
   * A part of a page.
   *
   * @param id anchor, lower case with hyphens
   * @param heading a few words
   * @param blocks what it says
   */
  record Section(String id, String heading, List<Block> blocks) {}
}
