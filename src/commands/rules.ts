import { Command } from 'commander';
import { presentCode } from '../registry/migrations/renamed-rules.ts';
import { ruleDocument } from '../report/rules/rule-document.ts';
import { ruleListDocument } from '../report/rules/rule-list-document.ts';
import { formatRulesAsJson } from '../report/rules/rules-as-json.ts';
import { rules, rulesByClass } from '../rules/engine/rules.ts';
import { quote } from '../text/quote.ts';
import { wordHint } from '../text/unknown-word.ts';
import { formatDocument } from '../units/format-document.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { type AnswerFormat, formatOption } from './shared-options.ts';

interface RulesOptions {
  readonly format: AnswerFormat;
}

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

Exit status: 0 printed, 2 there is no such rule.`,
    )
    .action((code: string | undefined, { format }: RulesOptions) => {
      const classes = [...rulesByClass()].filter(([name]) => code === undefined || name === code);
      const rule = rules.find((documented) => documented.code === code);
      if (classes.length === 0 && rule === undefined) return exit.cannotRun(unknownRule(code));
      if (format === 'json') {
        cli.out(formatRulesAsJson(rule === undefined ? classes.flatMap(([, listed]) => listed) : [rule]));
      } else {
        const document = rule === undefined ? ruleListDocument(new Map(classes)) : ruleDocument(rule);
        cli.out(formatDocument(document, format, cli));
      }
    });
}

function unknownRule(code = '') {
  const now = presentCode(code);
  const codes = rules.map((rule) => rule.code);
  const alike = codes.find((known) => known.includes(code));
  const otherwise = alike === undefined ? '`meltbounds rules` lists them all.' : `Did you mean "${alike}"?`;
  const guess = wordHint(code, codes, otherwise);
  return {
    message: `There is no rule "${quote(code)}"`,
    help: now === null ? guess : `It is called "${now}" now.`,
  };
}
