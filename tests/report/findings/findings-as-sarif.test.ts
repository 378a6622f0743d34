import { execFileSync } from 'node:child_process';
import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import formatsPlugin from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/registry/finding.ts';
import { formatFindingsAsSarif } from '../../../src/report/findings/findings-as-sarif.ts';
import { rules } from '../../../src/rules/engine/rules.ts';
import { temporaryFolder } from '../../sample-registry.ts';
import { aFinding, aNote, aWarning, aWholeFile } from './some-findings.ts';

const findings = [aFinding(), aNote, aWarning, aWholeFile];

// The schema of SARIF 2.1.0 (OASIS) and an independent reader of it, both from the npm package of the SARIF tools.
const tool = createRequire(import.meta.url)(`@microsoft/sarif-multitool-${process.platform}`) as string;
const schema = JSON.parse(readFileSync(join(dirname(tool), 'sarif-2.1.0.json'), 'utf8')) as object;
const ajv = new Ajv2020({ strict: false, allErrors: true });
formatsPlugin.default(ajv);
const fitsSchema = ajv.compile(schema);

interface Result {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: string;
  readonly locations: readonly {
    readonly physicalLocation: { readonly artifactLocation: object; readonly region: object };
  }[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
}

interface Run {
  readonly tool: {
    readonly driver: { readonly rules: readonly { readonly id: string; readonly helpUri: string }[] };
  };
  readonly results: readonly Result[];
}

function runOf(text: string): Run {
  return (JSON.parse(text) as { readonly runs: readonly [Run] }).runs[0];
}

function fingerprints(given: readonly Finding[]): unknown[] {
  return runOf(formatFindingsAsSarif(given, '1.2.3')).results.map(
    ({ partialFingerprints }) => partialFingerprints,
  );
}

/** What the independent reader complains about. */
function complaintsAbout(sarif: string, options: readonly string[] = []): string[] {
  const file = join(temporaryFolder(), 'findings.sarif');
  writeFileSync(file, sarif);
  // The package sets this bit when it is installed, unless scripts of packages are switched off.
  chmodSync(tool, 0o755);
  const printed = execFileSync(tool, ['validate', file, ...options], { encoding: 'utf8' });
  expect(printed).toContain('1 files scanned');
  return printed.split('\n').filter((line) => /: (?:error|warning|note) [A-Z]+\d+:/.test(line));
}

/** Suggestions, none of them an error or a warning, that are not followed, each for a reason. */
const accepted = [
  'SARIF2002', // each message is a sentence of its own, with its figures in it
  'SARIF2003', // which commit was checked, only the code host knows
  'SARIF2006', // the tool looks the schema up in the network, which tests do without
  'SARIF2009', // `class/name` is the code that people type, not a hierarchy
  'SARIF2010', // a finding about a whole file has nothing to quote
  'SARIF2011', // the quoted text is a line, and says enough
];

describe('the report as SARIF', () => {
  it('fits the schema of SARIF 2.1.0', () => {
    expect(
      fitsSchema(JSON.parse(formatFindingsAsSarif(findings, '1.2.3'))),
      JSON.stringify(fitsSchema.errors),
    ).toBe(true);
    expect(fitsSchema(JSON.parse(formatFindingsAsSarif([], '1.2.3')))).toBe(true);
  });

  it('is read without complaint by an independent tool, which does complain about a wrong one', {
    tags: 'long',
  }, () => {
    const sarif = formatFindingsAsSarif(findings, '1.2.3');
    expect(complaintsAbout(sarif)).toEqual([]);
    expect(complaintsAbout(sarif.replace('"startLine": 12', '"startLine": 0'))).not.toEqual([]);
  });

  it('says nothing that the stricter profiles of code hosts ask for is missing', { tags: 'long' }, () => {
    const text = `${'\n'.repeat(11)}topSpeed: 500 mm`;
    const sarif = formatFindingsAsSarif(findings, '1.2.3', { count: 0, listed: [] }, () => text);
    const kinds = ['--level', 'Error;Warning;Note', '--rule-kind', 'Sarif;Ghas;Ado'];
    const complaints = complaintsAbout(sarif, kinds);
    expect(complaints.filter((line) => !accepted.some((code) => line.includes(` note ${code}:`)))).toEqual(
      [],
    );
    // Only the finding that has no text stays without a quotation; the tool does complain about the others.
    const unquoted = (lines: readonly string[]) => lines.filter((line) => line.includes(' SARIF2010:'));
    expect(unquoted(complaints)).toHaveLength(1);
    expect(unquoted(complaintsAbout(formatFindingsAsSarif(findings, '1.2.3'), kinds)).length).toBeGreaterThan(
      1,
    );
  });

  it('quotes what a finding points at, where the text is known', () => {
    const text = `${'\n'.repeat(11)}topSpeed:   500 mm`;
    const { results } = runOf(formatFindingsAsSarif(findings, '1.2.3', { count: 0, listed: [] }, () => text));
    expect(results.map(({ locations }) => locations[0]?.physicalLocation.region)).toMatchObject([
      { startLine: 12, snippet: { text: '500' } },
      { startLine: 12, snippet: { text: '500' } },
      { startLine: 3, snippet: { text: '\n\n' } },
      { startLine: 1 },
    ]);
    expect(results.at(-1)?.locations[0]?.physicalLocation.region).not.toHaveProperty('snippet');
  });

  it('is this for one finding', () => {
    expect(formatFindingsAsSarif([aFinding()], '1.2.3')).toMatchInlineSnapshot(`
      "{
        "$schema": "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
        "version": "2.1.0",
        "runs": [
          {
            "tool": {
              "driver": {
                "name": "meltbounds",
                "fullName": "meltbounds 1.2.3",
                "semanticVersion": "1.2.3",
                "informationUri": "https://meltbounds.example/",
                "rules": [
                  {
                    "id": "units/bare-number",
                    "name": "UnitsBareNumber",
                    "helpUri": "https://meltbounds.example/docs/rules/units-bare-number.md",
                    "shortDescription": {
                      "text": "A quantity has a unit."
                    },
                    "fullDescription": {
                      "text": "A quantity has a unit. Nobody can tell whether 430 was meant in mm/s or mm/min, and the machine runs either."
                    },
                    "help": {
                      "text": "Nobody can tell whether 430 was meant in mm/s or mm/min, and the machine runs either. Source: The Unified Code for Units of Measure (UCUM), case-sensitive codes; BIPM, The International System of Units, 9th edition, 2.1: value = number times unit",
                      "markdown": "Nobody can tell whether 430 was meant in mm/s or mm/min, and the machine runs either.\\n\\nSource: The Unified Code for Units of Measure (UCUM), case-sensitive codes; BIPM, The International System of Units, 9th edition, 2.1: value = number times unit"
                    },
                    "defaultConfiguration": {
                      "level": "error"
                    },
                    "properties": {
                      "tags": [
                        "units"
                      ]
                    }
                  }
                ]
              }
            },
            "automationDetails": {
              "id": "meltbounds/check/"
            },
            "columnKind": "utf16CodeUnits",
            "originalUriBaseIds": {
              "%SRCROOT%": {
                "description": {
                  "text": "The folder in which the check was run."
                }
              }
            },
            "results": [
              {
                "ruleId": "units/bare-number",
                "ruleIndex": 0,
                "level": "error",
                "message": {
                  "text": "The value of \\"topSpeed\\": 500 has no unit. if it is in mm/s, write \`500 mm/s\`"
                },
                "locations": [
                  {
                    "physicalLocation": {
                      "artifactLocation": {
                        "uri": "profiles/machines/plumstead/wren.yaml",
                        "uriBaseId": "%SRCROOT%"
                      },
                      "region": {
                        "startLine": 12,
                        "startColumn": 13,
                        "endLine": 12,
                        "endColumn": 16
                      }
                    },
                    "logicalLocations": [
                      {
                        "fullyQualifiedName": "/topSpeed/0/value"
                      }
                    ]
                  }
                ],
                "partialFingerprints": {
                  "ruleFileAndPlace/v1": "1bb626af0bed5c57900958df79dbc314"
                },
                "properties": {
                  "found": "500",
                  "allowed": "speed in mm/s",
                  "source": "UCUM, case-sensitive codes"
                }
              }
            ],
            "properties": {
              "acknowledged": 0
            }
          }
        ]
      }
      "
    `);
  });

  it('fits the schema with every rule that there is', () => {
    const all = rules.map(({ code, severity }) => aFinding({ rule: code, severity }));
    const sarif = formatFindingsAsSarif(all, '1.2.3');
    expect(fitsSchema(JSON.parse(sarif)), JSON.stringify(fitsSchema.errors)).toBe(true);
    expect(runOf(sarif).tool.driver.rules).toHaveLength(rules.length);
  });

  it('lists the rules that occur, sorted by code, and each result points at its own', () => {
    const { tool, results } = runOf(formatFindingsAsSarif(findings, '1.2.3'));
    const ids = tool.driver.rules.map(({ id }) => id);
    expect(ids).toEqual([...ids].sort());
    for (const { ruleId, ruleIndex } of results) expect(ids[ruleIndex]).toBe(ruleId);
  });

  it('names files relative to the working directory, with / and as a URI', () => {
    const [result] = runOf(formatFindingsAsSarif([aWarning], '1.2.3')).results;
    expect(result?.locations[0]?.physicalLocation.artifactLocation).toEqual({
      uri: 'profiles/filaments/a%20b%2C%20100%25%3A%20%22new%22.yaml',
      uriBaseId: '%SRCROOT%',
    });
  });

  it.each(['/srv/profiles/a.yaml', '/tmp/50 % [done]?/#1^|/é.yaml', '/a\\b/c:d@e&f=g+h,i;j.yaml'])(
    'names a file elsewhere, %s, by its whole address',
    (file) => {
      const [result] = runOf(formatFindingsAsSarif([{ ...aWarning, file }], '1.2.3')).results;
      const uri = String(Object(result?.locations[0]?.physicalLocation.artifactLocation).uri);
      expect(fileURLToPath(uri)).toBe(file);
      // RFC 3986, section 3.3: what a path may hold.
      expect(uri).toMatch(/^file:\/\/(?:\/(?:[\w.~!$&'()*+,;=:@-]|%[0-9A-F]{2})*)+$/);
    },
  );

  it('gives no end to a finding about a whole file', () => {
    const [result] = runOf(formatFindingsAsSarif([aWholeFile], '1.2.3')).results;
    expect(result?.locations[0]?.physicalLocation.region).toEqual({ startLine: 1, startColumn: 1 });
  });

  it('keeps the fingerprint of a finding whose line has moved', () => {
    expect(fingerprints([aFinding({ line: 40, endLine: 40 })])).toEqual(fingerprints([aFinding()]));
  });

  it('gives each finding a fingerprint of its own', () => {
    const [first, second, third] = fingerprints([aFinding(), aFinding(), aFinding({ pointer: '/other' })]);
    expect(first).not.toEqual(second);
    expect(first).not.toEqual(third);
  });
});
