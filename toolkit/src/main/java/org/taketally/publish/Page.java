package org.taketally.publish;

import java.util.List;
import org.taketally.publish.Block.Section;

/**
 * A page before it is written.
 *
 * @param title its title
 * @param lead one sentence under the title
 * @param stamp a warning above everything, or empty
 * @param sections in order
 * @param footer one sentence at the end
 */
record Page(String title, String lead, String stamp, List<Section> sections, String footer) {}
