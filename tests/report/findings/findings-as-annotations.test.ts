import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/registry/finding.ts';
import { formatFindingsAsAnnotations } from '../../../src/report/findings/findings-as-annotations.ts';
import { summarise } from '../../../src/report/findings/summary.ts';
import { aFinding, aNote, aWarning, aWholeFile } from './some-findings.ts';

function report(findings: readonly Finding[]): string[] {
  return formatFindingsAsAnnotations(findings, summarise(findings, 3)).split('\n');
}

function many(count: number, like: Finding): Finding[] {
  return Array.from({ length: count }, (_, index) => ({ ...like, line: index + 1, endLine: index + 1 }));
}

describe('the report as workflow commands', () => {
  it('is one line a finding, errors first, and the summary', () => {
    expect(report([aNote, aWarning, aFinding(), aWholeFile]).join('\n')).toMatchInlineSnapshot(`
      "::error file=profiles/machines/plumstead/wren.yaml,line=12,endLine=12,col=13,endColumn=16,title=units/bare-number::The value of "topSpeed": 500 has no unit%0Aif it is in mm/s, write \`500 mm/s\`
      ::error file=profiles/jobs/hook.yaml,line=1,endLine=1,col=1,endColumn=1,title=file/encoding::The file is not UTF-8 text%0ASave it as UTF-8
      ::warning file=profiles/filaments/a b%2C 100%25%3A "new".yaml,line=3,endLine=5,title=acknowledgement/expired::It was accepted until 2026-01-31
      ::notice file=profiles/machines/plumstead/wren.yaml,line=12,endLine=12,col=13,endColumn=16,title=style/key-order::"name" stands below "maker"%0AMove it.
      3 profiles: 2 errors, 1 warning, 1 note.
      "
    `);
  });

  it('names no columns where a finding spans lines', () => {
    expect(report([aFinding({ endLine: 13 })])[0]).toContain('wren.yaml,line=12,endLine=13,title=');
  });

  it('escapes line ends and percent signs in a message', () => {
    expect(report([aFinding({ message: '100 %', help: null })])[0]).toMatch(/::100 %25$/);
    expect(report([aFinding({ message: 'a', help: 'b' })])[0]).toMatch(/::a%0Ab$/);
  });

  it('shows control characters of a message as text', () => {
    expect(report([aFinding({ message: 'red \u001b[31m\r\n::error::x', help: null })])[0]).toMatch(
      /::red \\u\{1b\}\[31m\\u\{d\}\\u\{a\}::error::x$/,
    );
  });

  it('says before the notes how many findings a code host leaves out, and prints them all the same', () => {
    const lines = report([...many(12, aNote), ...many(13, aFinding()), ...many(11, aWarning)]);
    expect(lines.filter((line) => line.startsWith('::error '))).toHaveLength(13);
    expect(lines.filter((line) => line.startsWith('::warning '))).toHaveLength(11);
    expect(lines.slice(24, 26)).toEqual([
      '::notice title=meltbounds::Not shown here, but in the log of this step: 3 errors, 1 warning, 2 notes.',
      expect.stringContaining('::notice file='),
    ]);
  });

  it('says nothing of the kind where ten are shown', () => {
    expect(report(many(10, aFinding())).filter((line) => line.startsWith('::notice'))).toEqual([]);
  });
});
