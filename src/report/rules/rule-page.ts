import { kindFolders } from '../../registry/kind.ts';
import type { Rule, RuleExample } from '../../rules/engine/rule.ts';
import { rulePageName } from './rule-address.ts';

/** Everything that is said about a rule, as Markdown: the page of the documentation and the answer on the terminal. */
export function rulePage(rule: Rule): string {
  const { code, severity, statement, rationale, formula, source, example } = rule;
  const parts = [
    `# ${code}`,
    statement,
    `Severity: ${severity}`,
    `## Why\n\n${rationale}`,
    formula === undefined ? null : `## Formula\n\n${fenced(formula, '')}`,
    `## Source\n\n${source}`,
    example === undefined ? null : exampleText(example),
  ];
  return `${parts.filter((part) => part !== null).join('\n\n')}\n`;
}

function exampleText({ kind, copied, bad, good }: RuleExample): string {
  const where = copied
    ? `in a second ${kind}, otherwise a copy of the first,`
    : `in a ${kind} (${kindFolders[kind]}/)`;
  return `## Example\n\nWrong, ${where}:\n\n${fenced(bad, 'yaml')}\n\nRight:\n\n${fenced(good, 'yaml')}`;
}

function fenced(text: string, language: string): string {
  return `\`\`\`${language}\n${text.trimEnd()}\n\`\`\``;
}

/** The list of all rules, as Markdown, with links to their pages. */
export function ruleIndex(classes: ReadonlyMap<string, readonly Rule[]>): string {
  const sections = [...classes].map(([name, rules]) => {
    const rows = rules.map(
      ({ code, severity, statement }) =>
        `| [${code}](${rulePageName(code)}) | ${severity} | ${statement.replaceAll('|', '\\|')} |`,
    );
    return [`## ${name}`, '', '| rule | severity | what must hold |', '| --- | --- | --- |', ...rows].join(
      '\n',
    );
  });
  const note = 'Generated from the rules themselves by `npm run generate`; do not edit.';
  return `${['# Rules', note, ...sections].join('\n\n')}\n`;
}
