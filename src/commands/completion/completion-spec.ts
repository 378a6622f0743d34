import type { Command, Option } from 'commander';

/** What a shell needs to know of an option to complete it. */
export interface CompletedOption {
  /** `--format`, `-h`. */
  readonly names: readonly string[];
  readonly description: string;
  readonly takesValue: boolean;
  /** The values that it takes; empty where they are not a closed list: paths, ids, dates. */
  readonly choices: readonly string[];
}

export interface CompletedCommand {
  readonly name: string;
  readonly summary: string;
  readonly options: readonly CompletedOption[];
  /** What its first argument may be; empty where that is not a closed list. */
  readonly choices: readonly string[];
}

/** The commands of a program as shells complete them, read off the program itself. */
export function completedCommands(program: Command): CompletedCommand[] {
  return program.commands.map((command) => ({
    name: command.name(),
    summary: command.summary() || command.description(),
    options: [...command.options.map(completedOption), help],
    choices: command.registeredArguments[0]?.argChoices ?? [],
  }));
}

const help: CompletedOption = {
  names: ['--help'],
  description: 'display help for command',
  takesValue: false,
  choices: [],
};

function completedOption(option: Option): CompletedOption {
  return {
    names: [option.short, option.long].filter((name) => name !== undefined),
    description: option.description,
    takesValue: option.required || option.optional,
    choices: option.argChoices ?? [],
  };
}
