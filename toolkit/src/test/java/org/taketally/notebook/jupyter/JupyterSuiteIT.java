package org.taketally.notebook.jupyter;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.taketally.notebook.jupyter.Jupyter.Ran;

/** The Jupyter project's own tests of a kernel, package jupyter_kernel_test. */
class JupyterSuiteIT {

  @Test
  void passes_with_nothing_skipped() throws Exception {
    Jupyter.requirePythonModule("jupyter_kernel_test");
    Jupyter.kernel();
    String suite = Jupyter.ROOT.resolve("toolkit/src/test/python/kernel_suite.py").toString();
    Ran ran = Jupyter.run(Jupyter.TARGET, Jupyter.PYTHON.toString(), suite, "-v");
    assertThat(ran.status()).as(ran.output()).isZero();
    assertThat(ran.output()).contains("Ran 12 tests").doesNotContain("skipped");
  }
}
