import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/registry/finding.ts';
import { findingsDocument } from '../../../src/report/findings/findings-document.ts';
import { summarise } from '../../../src/report/findings/summary.ts';
import { formatDocument } from '../../../src/units/format-document.ts';
import { finding } from './findings.ts';

const texts = new Map([['profiles/a.yaml', 'kind: filament\nvalue: 22\n']]);

function report(findings: readonly Finding[], colour = false): string {
  const document = findingsDocument(findings, summarise(findings, 3), (file) => texts.get(file));
  return formatDocument(document, 'text', { colour });
}

describe('the report for people', () => {
  it('shows where, the line itself, what is wrong, what would do, why and what to do', () => {
    expect(report([finding()])).toMatchInlineSnapshot(`
      "3 profiles: 1 error.

      profiles/a.yaml:2:8 error units/bare-number
          2 | value: 22
            |        ~~
        wrong    The value of "meltFlow": 22 has no unit
        allowed  volume flow in mm3/s, cm3/s
        because  UCUM
        fix      if it is in mm3/s, write \`22 mm3/s\`
      "
    `);
  });

  it('leaves out what there is nothing to say about', () => {
    expect(report([finding({ allowed: null, source: null, help: null })])).toMatchInlineSnapshot(`
      "3 profiles: 1 error.

      profiles/a.yaml:2:8 error units/bare-number
          2 | value: 22
            |        ~~
        wrong  The value of "meltFlow": 22 has no unit
      "
    `);
  });

  it('does without the line where the file could not be read', () => {
    expect(report([finding({ file: 'profiles/b.yaml', rule: 'file/encoding' })])).not.toContain(' | ');
  });

  it('counts severities and sets findings apart', () => {
    const findings = [
      finding(),
      finding({ severity: 'warning', rule: 'plausibility/unusual' }),
      finding({ severity: 'note', rule: 'style/key-order' }),
      finding({ severity: 'note', rule: 'style/key-order' }),
    ];
    expect(report(findings)).toMatch(/\n\nprofiles\/a\.yaml:2:8 warning plausibility\/unusual\n/);
    expect(report(findings)).toMatch(/^3 profiles: 1 error, 1 warning, 2 notes\.\n\n/);
  });

  it('is one line where no problems are found', () => {
    expect(report([])).toBe('3 profiles: no problems found.\n');
    expect(
      formatDocument(
        findingsDocument([], summarise([], 1), () => undefined),
        'text',
      ),
    ).toBe('1 profile: no problems found.\n');
  });

  it('shows nothing of a file name or message that a terminal would obey', () => {
    const text = report([
      finding({ file: 'profiles/\u001b[2J.yaml', message: 'a\u001b]8;;x\u0007b', help: 'c\rd' }),
    ]);
    expect(text.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
    expect(text).toContain('profiles/\\u{1b}[2J.yaml:2:8');
  });

  it.each([
    ['error', 31],
    ['warning', 33],
    ['note', 36],
  ] as const)('paints an %s in the colour %i', (severity, code) => {
    expect(report([finding({ severity })], true)).toContain(`\u001b[${code}m${severity}\u001b[39m`);
  });
});
