package org.taketally.notebook.install;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.taketally.files.SafeFile;

/**
 * The kernel's mark: a scion set into a stock with a wedge, and a leaf that has come out. Drawn on
 * a square of 64 units.
 */
final class Logo {

  private static final double SIDE = 64;
  private static final String SKY = "#eef3e6";
  private static final String STOCK = "#7a5636";
  private static final String SCION = "#a9834f";
  private static final String LEAF = "#3f8f4f";
  private static final String TIE = "#f6f2e8";

  /** A filled outline: {@code M x y}, {@code L x y}, {@code C x y x y x y}, {@code Z}. */
  private record Shape(String outline, String colour) {}

  private static final List<Shape> SHAPES =
      List.of(
          new Shape(
              "M 0 12 C 0 4 4 0 12 0 L 52 0 C 60 0 64 4 64 12 L 64 52 C 64 60 60 64 52 64 L 12 64 C"
                  + " 4 64 0 60 0 52 Z",
              SKY),
          new Shape("M 22 34 L 42 34 L 42 64 L 22 64 Z", STOCK),
          new Shape("M 26 6 L 38 6 L 38 38 L 32 56 L 26 38 Z", SCION),
          new Shape("M 20 42 L 44 38 L 44 42 L 20 46 Z", TIE),
          new Shape("M 20 49 L 44 45 L 44 49 L 20 53 Z", TIE),
          new Shape("M 38 22 C 40 8 52 6 60 8 C 60 18 52 26 38 22 Z", LEAF),
          new Shape("M 26 26 C 24 16 14 14 6 16 C 8 26 16 32 26 26 Z", LEAF));

  private Logo() {}

  /** Writes {@code logo-svg.svg}, {@code logo-32x32.png} and {@code logo-64x64.png}. */
  static void write(Path folder) throws IOException {
    SafeFile.write(folder.resolve("logo-svg.svg"), svg());
    for (int side : new int[] {32, 64}) {
      String name = "logo-%dx%d.png".formatted(side, side);
      SafeFile.write(folder.resolve(name), out -> ImageIO.write(picture(side), "png", out));
    }
  }

  private static String svg() {
    StringBuilder svg =
        new StringBuilder(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 64 64\""
                + " role=\"img\"><title>Taketally</title>\n");
    for (Shape shape : SHAPES) {
      svg.append("<path d=\"%s\" fill=\"%s\"/>%n".formatted(shape.outline, shape.colour));
    }
    return svg.append("</svg>\n").toString();
  }

  private static BufferedImage picture(int side) {
    BufferedImage image = new BufferedImage(side, side, BufferedImage.TYPE_INT_ARGB);
    Graphics2D pen = image.createGraphics();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.transform(AffineTransform.getScaleInstance(side / SIDE, side / SIDE));
    for (Shape shape : SHAPES) {
      pen.setColor(Color.decode(shape.colour));
      pen.fill(path(shape.outline));
    }
    pen.dispose();
    return image;
  }

  private static Path2D path(String outline) {
    Path2D path = new Path2D.Double();
    String[] words = outline.split(" ");
    for (int i = 0; i < words.length; ) {
      String step = words[i];
      double[] at = new double[step.equals("C") ? 6 : step.equals("Z") ? 0 : 2];
      for (int k = 0; k < at.length; k++) {
        at[k] = Double.parseDouble(words[i + 1 + k]);
      }
      switch (step) {
        case "M" -> path.moveTo(at[0], at[1]);
        case "L" -> path.lineTo(at[0], at[1]);
        case "C" -> path.curveTo(at[0], at[1], at[2], at[3], at[4], at[5]);
        default -> path.closePath();
      }
      i += 1 + at.length;
    }
    return path;
  }
}
