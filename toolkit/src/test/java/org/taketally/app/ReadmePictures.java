package org.taketally.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.taketally.analysis.Analysis;
import org.taketally.figure.FigureSize;
import org.taketally.figure.Figures;

/** The README's pictures are figures of the demo; {@code -Dgolden=write} draws them anew. */
final class ReadmePictures {

  private static final Path IMAGES =
      Path.of(System.getProperty("taketally.root", "..")).resolve("docs/images");
  private static final Pattern READ_ALOUD =
      Pattern.compile("<desc[^>]*>(.*?)</desc>", Pattern.DOTALL);

  private ReadmePictures() {}

  /** Lines may lie a hair apart on another machine; what the figures say is the same. */
  static void assertDrawnOf(Analysis demo) throws IOException {
    Map<String, String> pictures =
        Map.of(
            "difficulty", Figures.difficulty(demo.difficulty().orElseThrow()),
            "rootstock-differences",
                Figures.differences(demo.rootstock().orElseThrow().type(), FigureSize.WIDE),
            "what-moves-take", Figures.importance(demo.importance()));
    for (Map.Entry<String, String> picture : pictures.entrySet()) {
      Path file = IMAGES.resolve(picture.getKey() + ".svg");
      if ("write".equals(System.getProperty("golden"))) {
        Files.writeString(file, picture.getValue() + "\n");
      }
      assertThat(said(Files.readString(file)))
          .as("%s, which -Dgolden=write draws anew", file)
          .isEqualTo(said(picture.getValue()));
    }
  }

  private static String said(String svg) {
    Matcher text = READ_ALOUD.matcher(svg);
    assertThat(text.find()).isTrue();
    return text.group(1) + " " + svg.replaceAll("(?s)^.*?(viewBox=\"[^\"]*\").*$", "$1");
  }
}
