package org.taketally.app;

import picocli.CommandLine.Command;

/** {@code taketally plan}: how large a trial must be, and which graft goes where. */
@Command(
    name = "plan",
    mixinStandardHelpOptions = true,
    synopsisSubcommandLabel = "COMMAND",
    subcommands = {PlanSizeCommand.class, PlanLayoutCommand.class, PlanNextCommand.class},
    description =
        "Plans a trial: how many grafts it takes, which graft goes where, and what to graft next.")
final class PlanCommand {}
