package org.taketally.notebook.kernel;

import java.util.function.Consumer;
import org.taketally.notebook.kernel.engine.EngineOptions;

/**
 * How a kernel presents itself and what it begins with.
 *
 * @param name shown to users
 * @param version shown to users
 * @param engine imports, classes and displays
 * @param log gets a line for everything an administrator may want to know
 */
public record KernelSetup(
    String name, String version, EngineOptions engine, Consumer<String> log) {}
