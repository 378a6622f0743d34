import { Command, Option } from 'commander';
import { jsonRules } from '../report/rules/json-rules.ts';
import { ruleList } from '../report/rules/rule-list.ts';
import { rulePage } from '../report/rules/rule-page.ts';
import { rules, rulesByClass } from '../rules/engine/rules.ts';
import { nearestWord } from '../text/nearest-word.ts';
import { quote } from '../text/quote.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';

interface RulesOptions {
  readonly format: 'text' | 'json';
}

export function rulesCommand(cli: CliContext, exit: Exit): Command {
  return new Command('rules')
    .summary('list what is checked, or explain one rule')
    .description(
      'Lists every rule with its severity and what must hold, or explains one: why, by which source, with an example.',
    )
    .argument('[code]', 'code of a rule, such as units/bare-number, or of a class, such as units')
    .addOption(
      new Option('--format <format>', 'form of the answer').choices(['text', 'json']).default('text'),
    )
    .addHelpText(
      'after',
      `
Examples:
  meltbounds rules
  meltbounds rules evidence
  meltbounds rules evidence/unsupported
  meltbounds rules --format json

Exit status: 0 printed, 2 there is no such rule.`,
    )
    .action((code: string | undefined, { format }: RulesOptions) => {
      const { out, colour } = cli;
      const classes = [...rulesByClass()].filter(([name]) => code === undefined || name === code);
      if (classes.length > 0) {
        const listed = new Map(classes);
        return out(format === 'json' ? jsonRules([...listed.values()].flat()) : ruleList(listed, colour));
      }
      const rule = rules.find((documented) => documented.code === code);
      if (rule === undefined) return exit.cannotRun(unknownRule(code));
      out(format === 'json' ? jsonRules([rule]) : rulePage(rule));
    });
}

function unknownRule(code = '') {
  const codes = rules.map((rule) => rule.code);
  const nearest = nearestWord(code, codes) ?? codes.find((known) => known.includes(code)) ?? null;
  return {
    message: `There is no rule "${quote(code)}"`,
    help: nearest === null ? '`meltbounds rules` lists them all.' : `Did you mean "${nearest}"?`,
  };
}
