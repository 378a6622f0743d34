import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { formatFindingsAsCodeQuality } from '../../../src/report/findings/findings-as-code-quality.ts';
import { formatFindingsAsHtml } from '../../../src/report/findings/findings-as-html.ts';
import { formatFindingsAsMarkdown } from '../../../src/report/findings/findings-as-markdown.ts';
import { summarise } from '../../../src/report/findings/summary.ts';
import { aFinding, aNote, aWarning, aWholeFile } from './some-findings.ts';

const findings = [aNote, aWarning, aFinding(), aWholeFile];
const summary = summarise(findings, 7);
const textOf = () => `${'\n'.repeat(11)}topSpeed: 500 mm`;
const hostile = aFinding({
  message: '<script>alert(1)</script> [x](https://evil.example) @everyone',
  file: 'profiles/<img src=x>.yaml',
});

describe('the report for widgets of merge requests', () => {
  it('is a list with description, name, severity, place and fingerprint', () => {
    expect(JSON.parse(formatFindingsAsCodeQuality([aFinding()]))).toEqual([
      {
        description: 'The value of "topSpeed": 500 has no unit. if it is in mm/s, write `500 mm/s`',
        check_name: 'units/bare-number',
        fingerprint: expect.stringMatching(/^[0-9a-f]{32}$/),
        severity: 'critical',
        location: { path: 'profiles/machines/plumstead/wren.yaml', lines: { begin: 12, end: 12 } },
      },
    ]);
    expect(formatFindingsAsCodeQuality([])).toBe('[]\n');
  });

  it('knows a finding again when lines move, and tells two of a kind apart', () => {
    const prints = (given: typeof findings) =>
      JSON.parse(formatFindingsAsCodeQuality(given)).map((each: { fingerprint: string }) => each.fingerprint);
    expect(prints([aFinding({ line: 40, endLine: 40 })])).toEqual(prints([aFinding()]));
    expect(new Set(prints([aFinding(), aFinding(), ...findings])).size).toBe(6);
  });
});

describe('the report as Markdown', () => {
  it('begins with its mark, and has the most serious first', () => {
    const markdown = formatFindingsAsMarkdown(findings, summary, textOf);
    expect(markdown).toMatch(
      /^<!-- meltbounds check -->\n\n### Check of the profiles\n\n.*7 profiles: 2 errors/,
    );
    const order = [...markdown.matchAll(/^#### .*?(error|warning|note)/gm)].map(([, severity]) => severity);
    expect(order).toEqual(['error', 'error', 'warning', 'note']);
  });

  it('fits into a comment, however many findings there are, and says how many are left out', () => {
    const many = Array.from({ length: 3000 }, (_, index) =>
      aFinding({ line: index + 1, message: 'ü'.repeat(300) }),
    );
    const markdown = formatFindingsAsMarkdown(many, summarise(many, 1), textOf);
    expect(Buffer.byteLength(markdown)).toBeLessThan(60_000);
    const shown = markdown.match(/^#### /gm)?.length ?? 0;
    expect(shown).toBeGreaterThan(10);
    expect(markdown).toContain(`And ${3000 - shown} findings more.`);
  });

  it('shows what a stranger wrote as text', () => {
    const markdown = formatFindingsAsMarkdown([hostile], summarise([hostile], 1), () => undefined);
    expect(markdown).not.toMatch(/(?<!\\)<(?:script|img)|(?<!\\)\]\(|@everyone/);
  });
});

describe('the report as a page', () => {
  const page = formatFindingsAsHtml([...findings, hostile], summary, textOf);

  it('is sound HTML that loads and runs nothing', async () => {
    const validator = new HtmlValidate({
      extends: ['html-validate:recommended', 'html-validate:document', 'html-validate:a11y'],
    });
    const { results } = await validator.validateString(page);
    expect(results.flatMap(({ messages }) => messages.map(({ message }) => message))).toEqual([]);
    expect(page).toContain('default-src &apos;none&apos;');
    expect(page).not.toMatch(/<(?:script|img|link)|<[^>]*\s(?:href|src)=/);
  });

  it('says what is wrong, where, and what to do', () => {
    for (const text of ['wren.yaml:12:13', 'has no unit', 'Save it as UTF-8', '7 profiles: 2 errors'])
      expect(page).toContain(text);
  });
});
