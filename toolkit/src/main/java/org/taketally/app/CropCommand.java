package org.taketally.app;

import picocli.CommandLine.Command;

/** {@code taketally crop}: the crop profiles there are, and one to start your own from. */
@Command(
    name = "crop",
    mixinStandardHelpOptions = true,
    synopsisSubcommandLabel = "COMMAND",
    subcommands = {CropListCommand.class, CropTemplateCommand.class},
    description = "Lists crop profiles, and writes one to start your own from.")
final class CropCommand {}
