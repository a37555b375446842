package org.taketally.publish;

import java.util.List;
import org.taketally.publish.Block.Section;
import org.taketally.wording.language.Language;
import org.taketally.wording.season.PageWords;
import org.taketally.wording.season.SeasonWords;

/**
 * A page before it is written.
 *
 * @param words what stands around it, and its language
 * @param title its title
 * @param lead one sentence under the title
 * @param stamp a warning above everything, or empty
 * @param sections in order
 * @param footer one sentence at the end
 */
record Page(
    PageWords words,
    String title,
    String lead,
    String stamp,
    List<Section> sections,
    String footer) {

  /** A working page, which is in English. */
  Page(String title, String lead, String stamp, List<Section> sections, String footer) {
    this(SeasonWords.in(Language.ENGLISH).page(), title, lead, stamp, sections, footer);
  }
}
