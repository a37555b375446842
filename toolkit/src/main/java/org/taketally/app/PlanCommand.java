package org.taketally.app;

import picocli.CommandLine.Command;

/** {@code taketally plan}: how large a trial must be, and which graft goes where. */
@Command(
    name = "plan",
    mixinStandardHelpOptions = true,
    synopsisSubcommandLabel = "COMMAND",
    subcommands = {PlanSizeCommand.class, PlanLayoutCommand.class},
    description = "Plans a trial: how many grafts it takes, and which graft goes where.")
final class PlanCommand {}
