package org.taketally.figure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.Arrays;
import javax.imageio.ImageIO;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * A figure as a PNG picture, for places that show no SVG: untrusted notebooks, PDF, word
 * processors. Draws what our figures are made of and nothing else: lines, rectangles, circles,
 * polygons, paths of straight lines, and text in the system's sans-serif.
 */
public final class FigurePng {

  /** Dots per unit of the figure, so that print is sharp. */
  private static final int FINE = 2;

  private static final int BOLD_FROM = 600;

  private final Graphics2D canvas;

  private FigurePng(Graphics2D canvas) {
    this.canvas = canvas;
  }

  /**
   * Draws a figure.
   *
   * @param svg a figure's text, as {@link Figures} gives it
   * @return a PNG file, two dots per unit of the figure
   * @throws IllegalArgumentException if the text isn't a figure of ours
   */
  public static byte[] of(String svg) {
    Element root = parsed(svg);
    int width = FINE * (int) Math.ceil(number(root, "width", 0));
    int height = FINE * (int) Math.ceil(number(root, "height", 0));
    if (!(width > 0 && height > 0)) {
      throw new IllegalArgumentException("a figure has a width and a height above 0");
    }
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D canvas = image.createGraphics();
    try {
      canvas.setColor(Color.WHITE);
      canvas.fillRect(0, 0, width, height);
      canvas.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      canvas.setRenderingHint(
          RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
      canvas.setRenderingHint(
          RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
      canvas.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
      canvas.scale(FINE, FINE);
      new FigurePng(canvas).drawInside(root);
    } finally {
      canvas.dispose();
    }
    return file(FewColours.of(image));
  }

  private static byte[] file(BufferedImage image) {
    ByteArrayOutputStream file = new ByteArrayOutputStream();
    try (ImageOutputStream inMemory = new MemoryCacheImageOutputStream(file)) {
      ImageIO.write(image, "png", inMemory);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return file.toByteArray();
  }

  private static Element parsed(String svg) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      DocumentBuilder builder = factory.newDocumentBuilder();
      builder.setErrorHandler(new DefaultHandler()); // throws; the usual one prints, too
      Element root = builder.parse(new InputSource(new StringReader(svg))).getDocumentElement();
      if (!root.getTagName().equals("svg")) {
        throw new IllegalArgumentException("no figure: it begins with " + root.getTagName());
      }
      return root;
    } catch (ParserConfigurationException | SAXException | IOException broken) {
      throw new IllegalArgumentException("no figure: " + broken.getMessage(), broken);
    }
  }

  private void drawInside(Element parent) {
    NodeList children = parent.getChildNodes();
    for (int i = 0; i < children.getLength(); i++) {
      if (children.item(i).getNodeType() == Node.ELEMENT_NODE) {
        draw((Element) children.item(i));
      }
    }
  }

  private void draw(Element element) {
    switch (element.getTagName()) {
      case "title", "desc" -> {
        // words about the figure, not in it
      }
      case "g" -> drawInside(element);
      case "text" -> drawText(element);
      case "line" ->
          paint(
              element,
              new Line2D.Double(
                  number(element, "x1", 0),
                  number(element, "y1", 0),
                  number(element, "x2", 0),
                  number(element, "y2", 0)));
      case "rect" -> {
        double round = 2 * number(element, "rx", 0);
        paint(
            element,
            new RoundRectangle2D.Double(
                number(element, "x", 0),
                number(element, "y", 0),
                number(element, "width", 0),
                number(element, "height", 0),
                round,
                round));
      }
      case "circle" -> {
        double r = number(element, "r", 0);
        paint(
            element,
            new Ellipse2D.Double(
                number(element, "cx", 0) - r, number(element, "cy", 0) - r, 2 * r, 2 * r));
      }
      case "polygon" -> paint(element, lines(element.getAttribute("points"), true));
      case "path" -> paint(element, lines(element.getAttribute("d"), false));
      default ->
          throw new IllegalArgumentException(
              "our figures have no <" + element.getTagName() + ">, so it isn't drawn");
    }
  }

  /** Corners, as pairs of numbers; an M begins a new line. */
  private static Path2D lines(String corners, boolean closed) {
    Path2D path = new Path2D.Double();
    for (String part : corners.split("(?=M)")) {
      String[] numbers = part.replaceAll("[MLZ,]", " ").strip().split("\\s+");
      for (int i = 0; i + 1 < numbers.length; i += 2) {
        double x = Double.parseDouble(numbers[i]);
        double y = Double.parseDouble(numbers[i + 1]);
        if (i == 0) {
          path.moveTo(x, y);
        } else {
          path.lineTo(x, y);
        }
      }
      if (closed || part.endsWith("Z")) {
        path.closePath();
      }
    }
    return path;
  }

  private void paint(Element element, Shape shape) {
    String fill = element.getAttribute("fill");
    if (!fill.equals("none") && !(shape instanceof Line2D)) {
      canvas.setColor(fill.isEmpty() ? Color.BLACK : Color.decode(fill));
      canvas.fill(shape);
    }
    String stroke = element.getAttribute("stroke");
    if (!stroke.isEmpty() && !stroke.equals("none")) {
      canvas.setColor(Color.decode(stroke));
      canvas.setStroke(stroke(element));
      canvas.draw(shape);
    }
  }

  private static BasicStroke stroke(Element element) {
    float width = (float) number(element, "stroke-width", 1);
    boolean round = element.getAttribute("stroke-linecap").equals("round");
    int cap = round ? BasicStroke.CAP_ROUND : BasicStroke.CAP_BUTT;
    String dashes = element.getAttribute("stroke-dasharray");
    if (dashes.isEmpty() || dashes.equals("none")) {
      return new BasicStroke(width, cap, BasicStroke.JOIN_MITER, 4);
    }
    double[] lengths =
        Arrays.stream(dashes.split("[ ,]+")).mapToDouble(Double::parseDouble).toArray();
    float[] pattern = new float[lengths.length];
    for (int i = 0; i < pattern.length; i++) {
      pattern[i] = (float) lengths[i];
    }
    return new BasicStroke(width, cap, BasicStroke.JOIN_MITER, 4, pattern, 0);
  }

  private void drawText(Element element) {
    boolean bold = number(element, "font-weight", 400) >= BOLD_FROM;
    Font font =
        new Font(Font.SANS_SERIF, bold ? Font.BOLD : Font.PLAIN, 1)
            .deriveFont((float) number(element, "font-size", 16));
    String text = element.getTextContent();
    double width = font.getStringBounds(text, canvas.getFontRenderContext()).getWidth();
    double before =
        switch (element.getAttribute("text-anchor")) {
          case "end" -> width;
          case "middle" -> width / 2;
          default -> 0;
        };
    canvas.setFont(font);
    canvas.setColor(Color.decode(element.getAttribute("fill")));
    canvas.drawString(
        text, (float) (number(element, "x", 0) - before), (float) number(element, "y", 0));
  }

  private static double number(Element element, String name, double otherwise) {
    String text = element.getAttribute(name);
    return text.isEmpty() ? otherwise : Double.parseDouble(text);
  }
}
