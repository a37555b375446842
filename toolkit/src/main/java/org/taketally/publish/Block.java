package org.taketally.publish;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.taketally.answers.Estimate;
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

  default Points cautions() {
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

  /** What is folded away, where figures are left out; null if nothing remains. */
  default Section textFold() {
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

  /** Cautions as one quiet list. */
  record Cautions(Points cautions) implements Block {
    static Cautions of(List<String> points) {
      return new Cautions(new Points(points));
    }
  }

  /** A figure laid out for wide and for narrow pages. */
  record Figure(Drawing figure) implements Block {}

  /** A small table in plain words. */
  record Table(Grid grid) implements Block {}

  /** A table of an answer, without names that are the same in each row. */
  record Answers(String answerTable) implements Block {
    static Answers of(AnswerTable table) {
      return new Answers(table.withoutRepeats().toHtml());
    }
  }

  /** Something for those who want to know more, folded away. */
  record Fold(Section fold) implements Block {
    @Override
    public Section textFold() {
      return fold.blocks().stream().allMatch(Figure.class::isInstance) ? null : fold;
    }
  }

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
   * @param bars shares drawn beside the names; empty for none
   */
  record Grid(
      String caption,
      List<String> headings,
      List<List<String>> rows,
      boolean wordy,
      Optional<Bars> bars) {

    Grid(String caption, List<String> headings, List<List<String>> rows) {
      this(caption, headings, rows, false);
    }

    Grid(String caption, List<String> headings, List<List<String>> rows, boolean wordy) {
      this(caption, headings, rows, wordy, Optional.empty());
    }

    /** The same with a column of bars after the names, one a row. */
    Grid with(String heading, List<Optional<Estimate>> shares) {
      return new Grid(caption, headings, rows, wordy, Optional.of(new Bars(heading, shares)));
    }

    List<String> barHeading() {
      return bars.stream().map(Bars::heading).toList();
    }

    List<String> otherHeadings() {
      return headings.subList(1, headings.size());
    }

    String firstHeading() {
      return headings.get(0);
    }

    List<Row> lines() {
      List<Row> lines = new ArrayList<>();
      for (int i = 0; i < rows.size(); i++) {
        lines.add(row(i));
      }
      return lines;
    }

    private Row row(int number) {
      List<String> row = rows.get(number);
      List<Cell> cells = new ArrayList<>();
      for (int i = 1; i < row.size(); i++) {
        cells.add(new Cell(headings.get(i), row.get(i)));
      }
      List<BarCell> drawn =
          bars.stream()
              .map(all -> new BarCell(all.shares().get(number).stream().map(Bar::of).toList()))
              .toList();
      return new Row(row.get(0), drawn, cells);
    }
  }

  /**
   * Shares drawn as bars.
   *
   * @param heading of their column
   * @param shares one a row, with their ranges; empty where there is none
   */
  record Bars(String heading, List<Optional<Estimate>> shares) {}

  /** A row of a {@link Grid}. */
  record Row(String name, List<BarCell> barCells, List<Cell> cells) {
    List<String> values() {
      return cells.stream().map(Cell::text).toList();
    }
  }

  /** A text and the heading of its column. */
  record Cell(String heading, String text) {

    private static final int SHORT = 14;

    /** Whether it is one short word, number or date, which is never broken. */
    boolean whole() {
      return text.length() <= SHORT && text.indexOf(' ') < 0;
    }
  }

  /** Room for a bar, which may stay empty. */
  record BarCell(List<Bar> drawn) {}

  /** A share and its range, in whole per cent. */
  record Bar(long low, long width, long value) {
    static Bar of(Estimate share) {
      long low = Math.round(100 * share.low());
      return new Bar(
          low, Math.max(1, Math.round(100 * share.high()) - low), Math.round(100 * share.value()));
    }
  }

  /**
   * A part of a page.
   *
   * @param id anchor, lower case with hyphens
   * @param heading a few words
   * @param blocks what it says
   */
  record Section(String id, String heading, List<Block> blocks) {}
}
