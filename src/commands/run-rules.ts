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
import type { AnswerFormat } from './shared-options.ts';

export interface RulesOptions {
  readonly format: AnswerFormat;
}

export async function runRules(
  code: string | undefined,
  { format }: RulesOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const classes = [...rulesByClass()].filter(([name]) => code === undefined || name === code);
  const rule = rules.find((documented) => documented.code === code);
  if (classes.length === 0 && rule === undefined) return exit.cannotRun(unknownRule(code));
  if (format === 'json') {
    cli.out(formatRulesAsJson(rule === undefined ? classes.flatMap(([, listed]) => listed) : [rule]));
  } else {
    const document = rule === undefined ? ruleListDocument(new Map(classes)) : ruleDocument(rule);
    cli.out(formatDocument(document, format, cli));
  }
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
