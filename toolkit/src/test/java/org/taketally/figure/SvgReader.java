package org.taketally.figure;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Reads a figure back as strict XML, with the room each text takes. */
public final class SvgReader {

  /** Where a text stands: its box in the figure's units. */
  record TextBox(String text, double left, double top, double right, double bottom) {
    boolean meets(TextBox other) {
      return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }
  }

  private SvgReader() {}

  /** The document of well-formed XML. */
  public static Document parse(String xml) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      DocumentBuilder builder = factory.newDocumentBuilder();
      builder.setErrorHandler(null);
      return builder.parse(new InputSource(new StringReader(xml)));
    } catch (SAXException | IOException | ParserConfigurationException e) {
      throw new AssertionError("not well-formed: " + e.getMessage() + "\n" + xml, e);
    }
  }

  static List<Element> elements(Document document, String name) {
    NodeList nodes = document.getElementsByTagName(name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      elements.add((Element) nodes.item(i));
    }
    return elements;
  }

  static List<TextBox> texts(Document document) {
    return elements(document, "text").stream().map(SvgReader::box).toList();
  }

  private static TextBox box(Element text) {
    double size = Double.parseDouble(text.getAttribute("font-size"));
    boolean bold = !text.getAttribute("font-weight").isEmpty();
    double width = TextWidth.of(text.getTextContent(), size, bold);
    double x = Double.parseDouble(text.getAttribute("x"));
    double y = Double.parseDouble(text.getAttribute("y"));
    double left =
        switch (text.getAttribute("text-anchor")) {
          case "end" -> x - width;
          case "middle" -> x - width / 2;
          default -> x;
        };
    return new TextBox(text.getTextContent(), left, y - 0.75 * size, left + width, y + 0.2 * size);
  }

  /** Boxes of circles and polygons: what stands for estimates. */
  static List<TextBox> marks(Document document) {
    List<TextBox> marks = new ArrayList<>();
    for (Element circle : elements(document, "circle")) {
      double x = Double.parseDouble(circle.getAttribute("cx"));
      double y = Double.parseDouble(circle.getAttribute("cy"));
      double r = Double.parseDouble(circle.getAttribute("r"));
      marks.add(new TextBox("circle", x - r, y - r, x + r, y + r));
    }
    for (Element polygon : elements(document, "polygon")) {
      DoubleSummaryStatistics across = new DoubleSummaryStatistics();
      DoubleSummaryStatistics down = new DoubleSummaryStatistics();
      for (String point : polygon.getAttribute("points").trim().split(" ")) {
        across.accept(Double.parseDouble(point.split(",")[0]));
        down.accept(Double.parseDouble(point.split(",")[1]));
      }
      marks.add(
          new TextBox("polygon", across.getMin(), down.getMin(), across.getMax(), down.getMax()));
    }
    return marks;
  }
}
