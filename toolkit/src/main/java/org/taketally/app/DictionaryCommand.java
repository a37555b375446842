package org.taketally.app;

import picocli.CommandLine.Command;

/** {@code taketally dictionary}: help with the file that says how a sheet is kept. */
@Command(
    name = "dictionary",
    mixinStandardHelpOptions = true,
    synopsisSubcommandLabel = "COMMAND",
    subcommands = {DictionarySuggestCommand.class, DictionarySchemaCommand.class},
    description = "Proposes a dictionary for sheets of your own.")
final class DictionaryCommand {}
