package org.taketally.figure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.taketally.files.XmlText;

/**
 * One element of a picture: name, attributes, text or children. Writes well-formed XML whatever the
 * text holds, and the same bytes for the same content.
 */
final class SvgElement {

  private static final int DECIMALS = 2;

  private final String name;
  private final Map<String, String> attributes = new LinkedHashMap<>();
  private final List<SvgElement> children = new ArrayList<>();
  private String text = "";

  private SvgElement(String name) {
    this.name = name;
  }

  static SvgElement of(String name) {
    return new SvgElement(name);
  }

  /** An element that holds text only, e.g. a title. */
  static SvgElement of(String name, String text) {
    SvgElement element = new SvgElement(name);
    element.text = text;
    return element;
  }

  static SvgElement line(double x1, double y1, double x2, double y2) {
    return of("line").with("x1", x1).with("y1", y1).with("x2", x2).with("y2", y2);
  }

  static SvgElement rectangle(double x, double y, double width, double height) {
    return of("rect").with("x", x).with("y", y).with("width", width).with("height", height);
  }

  SvgElement with(String attribute, String value) {
    attributes.put(attribute, value);
    return this;
  }

  SvgElement with(String attribute, double value) {
    return with(attribute, number(value));
  }

  SvgElement add(SvgElement... more) {
    children.addAll(List.of(more));
    return this;
  }

  SvgElement addAll(List<SvgElement> more) {
    children.addAll(more);
    return this;
  }

  String render() {
    StringBuilder out = new StringBuilder();
    render(out);
    return out.toString();
  }

  private void render(StringBuilder out) {
    out.append('<').append(name);
    attributes.forEach(
        (key, value) ->
            out.append(' ').append(key).append("=\"").append(XmlText.escape(value)).append('"'));
    if (text.isEmpty() && children.isEmpty()) {
      out.append("/>");
      return;
    }
    out.append('>').append(XmlText.escape(text));
    for (SvgElement child : children) {
      out.append('\n');
      child.render(out);
    }
    out.append(children.isEmpty() ? "" : "\n").append("</").append(name).append('>');
  }

  /**
   * A coordinate as text: two decimals at most, a point whatever the locale.
   *
   * @throws IllegalArgumentException if it isn't a finite number
   */
  static String number(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("can't draw at " + value + ", expected a finite number");
    }
    BigDecimal rounded =
        BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_UP).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }
}
