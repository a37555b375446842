package org.taketally.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.taketally.figure.SvgReader;
import org.taketally.publish.Block.Bullets;
import org.taketally.publish.Block.Callout;
import org.taketally.publish.Block.Caution;
import org.taketally.publish.Block.Fold;
import org.taketally.publish.Block.Grid;
import org.taketally.publish.Block.Paragraph;
import org.taketally.publish.Block.Section;
import org.taketally.publish.Block.Table;

class PageWriterTest {

  private static final String NASTY = "<b>|`*_[x](y) & \"q\" 'z' \u0007 {{page}} #1\nline";

  private static Page page(String text) {
    Grid grid = new Grid(text, List.of(text, "grafts"), List.of(List.of(text, "12")));
    List<Block> inner = List.of(new Paragraph("inside " + text));
    List<Block> blocks =
        List.of(
            new Paragraph(text),
            new Callout(text),
            new Caution(text),
            Bullets.of(List.of(text, "second")),
            new Table(grid),
            new Fold(new Section("more", text, inner)));
    return new Page(text, text, text, List.of(new Section("first", text, blocks)), text);
  }

  @Test
  void html_is_well_formed_whatever_was_typed() {
    String html = PageWriter.html(page(NASTY));

    assertThat(html).startsWith("<!DOCTYPE html>\n");
    SvgReader.parse(html.replace("<!DOCTYPE html>", ""));
    assertThat(html)
        .doesNotContain("<b>", "\u0007")
        .contains("&lt;b&gt;|`*_[x](y) &amp; &quot;q&quot; &#39;z&#39; \uFFFD {{page}} #1");
  }

  @Test
  void html_shows_each_block_once() {
    String html = PageWriter.html(page("Orrin"));

    assertThat(html).containsOnlyOnce("<p>Orrin</p>");
    assertThat(html).containsOnlyOnce("<p class=\"callout\">Orrin</p>");
    assertThat(html).containsOnlyOnce("<li>second</li>");
    assertThat(html).containsOnlyOnce("<caption>Orrin</caption>");
    assertThat(html)
        .containsOnlyOnce(
            "<th scope=\"row\" role=\"rowheader\">Orrin</th><td role=\"cell\" class=\"whole\""
                + " data-label=\"grafts\">12</td>");
    assertThat(html).containsOnlyOnce("<summary>Orrin</summary>");
    assertThat(html).containsOnlyOnce("<p>inside Orrin</p>");
  }

  @Test
  void html_needs_nothing_from_elsewhere_and_runs_nothing() {
    assertThat(PageWriter.html(page("Orrin")))
        .doesNotContain("<script", "src=", "http", "@import", "url(", "<link");
  }

  @Test
  void markdown_keeps_typed_text_as_text_and_tables_whole() {
    String markdown = PageWriter.markdown(page(NASTY));

    assertThat(markdown)
        .contains("\\<b\\>\\|\\`\\*\\_\\[x\\](y) \\& \"q\" 'z'   \\{\\{page\\}\\} \\#1 line")
        .doesNotContain("<b>");
    assertThat(PageWriter.markdown(page("Orrin")))
        .contains("| Orrin | grafts |\n|:--|--:|\n| Orrin | 12 |\n")
        .contains("- Orrin\n- second\n")
        .contains("# Orrin\n\nOrrin\n");
  }
}
