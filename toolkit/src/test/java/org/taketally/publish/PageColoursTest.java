package org.taketally.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.taketally.figure.ColourContrast;

/** WCAG 2.2, 1.4.3 and 1.4.11, for each of the page's three sets of colours: light, dark, paper. */
class PageColoursTest {

  private static final Pattern SET = Pattern.compile(":root \\{([^}]*)\\}");
  private static final Pattern COLOUR = Pattern.compile("--(\\w+): (#[0-9a-f]{6});");

  @Test
  void text_stands_out_in_every_set() throws IOException {
    int sets = 0;
    Matcher set = SET.matcher(css());
    while (set.find()) {
      Map<String, String> colours = new HashMap<>();
      Matcher colour = COLOUR.matcher(set.group(1));
      while (colour.find()) {
        colours.put(colour.group(1), colour.group(2));
      }
      for (String ground : new String[] {"paper", "sheet", "shade"}) {
        for (String text : new String[] {"ink", "soft", "leaf", "bark"}) {
          assertThat(ColourContrast.of(colours.get(text), colours.get(ground)))
              .as("%s on %s in set %d", text, ground, sets)
              .isGreaterThanOrEqualTo(4.5);
        }
      }
      sets++;
    }
    assertThat(sets).isEqualTo(3);
  }

  private static String css() throws IOException {
    try (var in = PageWriter.class.getResourceAsStream("page.css")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
