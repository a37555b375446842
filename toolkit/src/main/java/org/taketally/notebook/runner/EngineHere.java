package org.taketally.notebook.runner;

import com.google.gson.JsonObject;
import org.taketally.notebook.ToolkitKernel;
import org.taketally.notebook.kernel.KernelSetup;
import org.taketally.notebook.kernel.engine.Engine;
import org.taketally.notebook.kernel.engine.output.CellResult;

/** Runs cells in this process. */
final class EngineHere implements CellEngine {

  private final Engine engine;

  EngineHere(CellOutputs outputs) {
    engine = Engine.start(ToolkitKernel.setup().engine(), outputs);
  }

  @Override
  public CellResult run(int count, String code) {
    return engine.run(count, code);
  }

  @Override
  public void interrupt() {
    engine.interrupt();
  }

  @Override
  public JsonObject languageInfo() {
    return KernelSetup.languageInfo();
  }

  @Override
  public void close() {
    engine.close();
  }
}
