import { Command } from 'commander';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import type { RulesOptions } from './run-rules.ts';
import { formatOption } from './shared-options.ts';

export function rulesCommand(cli: CliContext, exit: Exit): Command {
  return new Command('rules')
    .summary('list what is checked, or explain one rule')
    .description(
      'Lists every rule with its severity and what must hold, or explains one: why, by which source, with an example.',
    )
    .argument('[code]', 'code of a rule, such as units/bare-number, or of a class, such as units')
    .addOption(formatOption('form of the answer'))
    .addHelpText(
      'after',
      `
Examples:
  meltbounds rules
  meltbounds rules evidence
  meltbounds rules evidence/unsupported
  meltbounds rules --format json

Exit status: 0 printed; 2 unknown rule.`,
    )
    .action(async (code: string | undefined, options: RulesOptions) => {
      const { runRules } = await import('./run-rules.ts');
      return runRules(code, options, cli, exit);
    });
}
