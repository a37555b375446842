package org.taketally.notebook.runner;

import java.util.Set;
import org.commonmark.node.Image;
import org.commonmark.node.Node;
import org.commonmark.renderer.NodeRenderer;
import org.commonmark.renderer.html.HtmlNodeRendererContext;

/** Names pictures instead of showing them, because showing one would fetch it. */
final class NamedPictures implements NodeRenderer {

  private final HtmlNodeRendererContext context;

  NamedPictures(HtmlNodeRendererContext context) {
    this.context = context;
  }

  @Override
  public Set<Class<? extends Node>> getNodeTypes() {
    return Set.of(Image.class);
  }

  @Override
  public void render(Node node) {
    context.getWriter().text("[picture");
    if (node.getFirstChild() != null) {
      context.getWriter().text(": ");
      for (Node word = node.getFirstChild(); word != null; word = word.getNext()) {
        context.render(word);
      }
    }
    context.getWriter().text(" at " + ((Image) node).getDestination() + "]");
  }
}
