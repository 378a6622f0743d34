import { Command, Option } from 'commander';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { rememberOption } from '../open-memory.ts';
import { registryOption, todayOption } from '../shared-options.ts';
import type { EditorOptions } from './serve-editor.ts';

export function editorCommand(cli: CliContext, exit: Exit): Command {
  return new Command('editor')
    .summary('show findings in an editor while one types')
    .description(
      'A language server (LSP 3.17) on standard input and output, to be started by an editor: findings at their places, fixes, completion of ids.',
    )
    .addOption(new Option('--stdio', 'what it does anyway; many editors add it').hideHelp())
    .addOption(registryOption())
    .addOption(todayOption())
    .addOption(rememberOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds editor
  meltbounds editor --registry meltbounds --registry profiles

Exit status: 0 the editor has ended it; 1 the editor has gone without ending it; 2 it cannot run.`,
    )
    .action(async (options: EditorOptions, command: Command) => {
      const { runEditor } = await import('./run-editor.ts');
      return runEditor(options, command.parent?.version() ?? '', cli, exit);
    });
}
