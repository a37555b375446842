package org.taketally.notebook.display;

import org.dflib.jjava.jupyter.Extension;
import org.dflib.jjava.jupyter.kernel.BaseKernel;

/**
 * Makes the toolkit at home in a kernel of JJava's line: such a kernel finds this class by itself
 * when the toolkit's jar is on its class path.
 */
public final class ToolkitExtension implements Extension {

  /** For the kernel. */
  public ToolkitExtension() {}

  @Override
  public void install(BaseKernel kernel) {
    Displays.register(kernel.getRenderer());
  }
}
