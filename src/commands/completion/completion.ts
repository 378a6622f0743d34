import { Argument, Command } from 'commander';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { bashCompletion } from './bash-completion.ts';
import { completedCommands } from './completion-spec.ts';
import { fishCompletion } from './fish-completion.ts';
import { zshCompletion } from './zsh-completion.ts';

const scripts = { bash: bashCompletion, zsh: zshCompletion, fish: fishCompletion } as const;

type Shell = keyof typeof scripts;

export function completionCommand(cli: CliContext, _finish: Exit): Command {
  return new Command('completion')
    .summary('print a completion script for a shell')
    .description('Prints a script that lets a shell complete commands, options and their values.')
    .addArgument(new Argument('<shell>', 'shell to complete in').choices(Object.keys(scripts)))
    .addHelpText(
      'after',
      `
Examples:
  meltbounds completion bash >> ~/.bash_completion
  meltbounds completion zsh > ~/.zfunc/_meltbounds
  meltbounds completion fish > ~/.config/fish/completions/meltbounds.fish

Exit status: 0 printed; 2 unknown shell.`,
    )
    .action((shell: Shell, _: object, command: Command) => {
      cli.out(scripts[shell](completedCommands(command.parent ?? command)));
    });
}
