import { expect, it } from 'vitest';
import { formatFindingsAsJson } from '../../../src/report/findings/findings-as-json.ts';
import { summarise } from '../../../src/report/findings/summary.ts';
import { finding } from './findings.ts';

it('holds every key of a finding in its order, null where there is nothing to say', () => {
  const findings = [finding({ found: null, allowed: null, source: null, help: null })];
  expect(formatFindingsAsJson(findings, summarise(findings, 2))).toMatchInlineSnapshot(`
    "{
      "format": "meltbounds-check/1",
      "findings": [
        {
          "rule": "units/bare-number",
          "severity": "error",
          "message": "The value of \\"meltFlow\\": 22 has no unit",
          "file": "profiles/a.yaml",
          "line": 2,
          "column": 8,
          "pointer": "/meltFlow/0/value",
          "found": null,
          "allowed": null,
          "source": null,
          "help": null
        }
      ],
      "summary": {
        "profiles": 2,
        "errors": 1,
        "warnings": 0,
        "notes": 0,
        "acknowledged": 0
      }
    }
    "
  `);
});

it('is the same document whatever the order of the keys it was given', () => {
  const one = finding();
  const other = Object.fromEntries(Object.entries(one).reverse()) as unknown as typeof one;
  expect(formatFindingsAsJson([other], summarise([other], 1))).toBe(
    formatFindingsAsJson([one], summarise([one], 1)),
  );
});

it('holds an empty list where there is no problems found', () => {
  expect(JSON.parse(formatFindingsAsJson([], summarise([], 5)))).toEqual({
    format: 'meltbounds-check/1',
    findings: [],
    summary: { profiles: 5, errors: 0, warnings: 0, notes: 0, acknowledged: 0 },
  });
});
