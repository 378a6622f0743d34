import type { Rule } from '../../rules/engine/rule.ts';
import { jsonText } from '../../text/json-text.ts';

/** Version of the form of the JSON rules, see `schema/output/rules.schema.json`. */
const rulesFormat = 'meltbounds-rules/1';

/** Rules for programs: the keys of each always all present, null where there is nothing to say. */
export function formatRulesAsJson(rules: readonly Rule[]): string {
  return jsonText({ format: rulesFormat, rules: rules.map(described) });
}

function described({ code, severity, statement, rationale, formula, source, example }: Rule) {
  return {
    code,
    severity,
    statement,
    rationale,
    formula: formula ?? null,
    source,
    example: example === undefined ? null : { kind: example.kind, bad: example.bad, good: example.good },
  };
}
