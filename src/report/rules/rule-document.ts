import { kindFolders } from '../../registry/kind.ts';
import type { Rule, RuleExample } from '../../rules/engine/rule.ts';
import { type Block, code, type Document, paragraph, section } from '../../text/document.ts';

/** Everything that is said about a rule: its page of the documentation, and the answer on the terminal. */
export function ruleDocument(rule: Rule): Document {
  const { statement, severity, rationale, formula, source, example } = rule;
  return {
    title: rule.code,
    answer: statement,
    blocks: [
      paragraph(`Severity: ${severity}`),
      section('Why', [paragraph(rationale)]),
      ...(formula === undefined ? [] : [section('Formula', [code(formula)])]),
      section('Source', [paragraph(source)]),
      ...(example === undefined ? [] : [section('Example', exampleBlocks(example))]),
    ],
  };
}

function exampleBlocks({ kind, copied, bad, good }: RuleExample): Block[] {
  const where = copied
    ? `in a second ${kind}, otherwise a copy of the first`
    : `in a ${kind} (${kindFolders[kind]}/)`;
  return [paragraph(`Wrong, ${where}:`), code(bad, 'yaml'), paragraph('Right:'), code(good, 'yaml')];
}
