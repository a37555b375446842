package org.taketally.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.taketally.files.XmlText;

class SvgElementTest {

  @Test
  void writes_attributes_text_and_children_in_order() {
    SvgElement group =
        SvgElement.of("g").with("id", "a").add(SvgElement.of("title", "Orrin"), SvgElement.of("b"));

    assertThat(group.render()).isEqualTo("<g id=\"a\">\n<title>Orrin</title>\n<b/>\n</g>");
  }

  @Test
  void makes_user_text_harmless() {
    String typed = "</title><script>alert('\"&')</script>";

    assertThat(SvgElement.of("title", typed).render())
        .isEqualTo(
            "<title>&lt;/title&gt;&lt;script&gt;alert(&#39;&quot;&amp;&#39;)&lt;/script&gt;</title>");
    assertThat(SvgElement.of("g").with("id", "\"><x y=\"").render())
        .isEqualTo("<g id=\"&quot;&gt;&lt;x y=&quot;\"/>");
  }

  /** XML 1.0, section 2.2: what may stand in a document; surrogates alone may not. */
  @Test
  void replaces_what_xml_cannot_hold_and_keeps_the_rest() {
    assertThat(XmlText.escape("a\u0000b\u001Bc\uFFFEd\uD83De"))
        .isEqualTo("a\uFFFDb\uFFFDc\uFFFDd\uFFFDe");
    assertThat(XmlText.escape("Höst\t🍐 日")).isEqualTo("Höst\t🍐 日");
  }

  @Test
  void writes_numbers_shortly_with_a_point() {
    assertThat(SvgElement.number(12.3456)).isEqualTo("12.35");
    assertThat(SvgElement.number(100)).isEqualTo("100");
    assertThat(SvgElement.number(-0.001)).isEqualTo("0");
    assertThat(SvgElement.number(1e7)).isEqualTo("10000000");
  }

  @Test
  void refuses_to_draw_at_no_place() {
    assertThatThrownBy(() -> SvgElement.number(Double.NaN))
        .hasMessage("can't draw at NaN, expected a finite number");
  }
}
