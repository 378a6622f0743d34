import type { CompletedCommand, CompletedOption } from './completion-spec.ts';

/** A completion script for fish. */
export function fishCompletion(commands: readonly CompletedCommand[]): string {
  const lines = commands.flatMap((command) => [
    `complete -c meltbounds -f -n __fish_use_subcommand -a ${command.name} -d ${quoted(command.summary)}`,
    ...(command.choices.length === 0 ? [] : [`${seen(command)} -f -a ${quoted(command.choices.join(' '))}`]),
    ...command.options.map((option) => optionLine(command, option)),
  ]);
  return `# Completion of meltbounds for fish: meltbounds completion fish | source\n${lines.join('\n')}\n`;
}

function seen({ name }: CompletedCommand): string {
  return `complete -c meltbounds -n '__fish_seen_subcommand_from ${name}'`;
}

function optionLine(command: CompletedCommand, option: CompletedOption): string {
  const { names, description, takesValue, choices } = option;
  const flags = names.map((name) => (name.startsWith('--') ? `-l ${name.slice(2)}` : `-s ${name.slice(1)}`));
  const closed = choices.length === 0 ? '-r' : `-x -a ${quoted(choices.join(' '))}`;
  return [seen(command), ...flags, ...(takesValue ? [closed] : []), `-d ${quoted(description)}`].join(' ');
}

function quoted(text: string): string {
  return `'${text.replace(/[\\']/g, (character) => `\\${character}`)}'`;
}
