package org.taketally.app;

import picocli.CommandLine.Command;

/** {@code taketally notebook}: run notebooks, install the kernel, see what is there. */
@Command(
    name = "notebook",
    mixinStandardHelpOptions = true,
    synopsisSubcommandLabel = "COMMAND",
    subcommands = {
      NotebookRunCommand.class,
      NotebookInstallCommand.class,
      NotebookListCommand.class
    },
    description = "Runs notebooks, and makes the kernel known to Jupyter.")
final class NotebookCommand {}
