import { describe, expect, it } from 'vitest';
import { formatTableAsHtml } from '../../../src/tables/card/table-as-html.ts';
import type { SpeedTable } from '../../../src/tables/derive/speed-table.ts';
import { flagText } from '../../../src/tables/write/words.ts';
import { htmlComplaints } from '../../html-complaints.ts';
import { tableWith } from '../derive/pairing-with.ts';

const table = tableWith();
const page = formatTableAsHtml(table);

/** The page as text: no tags, no style. */
function textOf(html: string): string {
  return html
    .replace(/<style>.*?<\/style>/s, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');
}

/** The table with a text of a stranger wherever text can stand. */
function withText(text: string): SpeedTable {
  return {
    ...table,
    machine: `machine ${text}`,
    nozzle: `nozzle ${text}`,
    filament: `filament ${text}`,
    policy: `policy ${text}`,
    conditions: table.conditions.map((row) => ({
      ...row,
      note: text,
      sourcedValues: row.sourcedValues.map((ground) => ({
        ...ground,
        reason: text,
        evidence: null,
        source: null,
      })),
    })),
    warnings: [text],
    inputs: [{ kind: text, id: text, version: text, digest: text }],
  };
}

describe('the page', () => {
  it('is valid and accessible HTML for the sample pairing', async () => {
    expect(await htmlComplaints(page)).toEqual([]);
  });

  it('says beside a setting what is wrong with its evidence, and what that means', () => {
    const conditions = table.conditions.map((row) => ({ ...row, flags: ['stale'] as const }));
    const text = textOf(formatTableAsHtml({ ...table, rows: [], conditions }));
    expect(text).toMatch(/claimed \(stale\): source oakhollow/);
    expect(text).toContain(flagText.stale);
  });

  it('needs nothing from outside: no script, no file, no address but the name of the SVG language', () => {
    expect(page).not.toMatch(/<(script|link|img|iframe|object|embed|base)\b/i);
    expect(page).not.toMatch(/@import|url\(/);
    expect([...page.matchAll(/https?:\/\/[^"\s]+/g)].map(([address]) => address)).toEqual(
      Array(3).fill('http://www.w3.org/2000/svg'),
    );
    expect(page).toContain('content="default-src &apos;none&apos;; style-src &apos;unsafe-inline&apos;"');
  });

  it('has one heading of the first rank, and below it no gaps', () => {
    const ranks = [...page.matchAll(/<h([1-6])\b/g)].map(([, rank]) => rank);
    expect(ranks[0]).toBe('1');
    expect(new Set(ranks.slice(1))).toEqual(new Set(['2']));
  });

  it('gives every table a caption, and every picture a title, a description and a caption', () => {
    expect(page.match(/<caption>/g)).toHaveLength(page.match(/<table/g)!.length);
    const figures = [...page.matchAll(/<figure>.*?<\/figure>/gs)].map(([figure]) => figure);
    expect(figures).toHaveLength(3);
    for (const figure of figures) {
      expect(figure).toMatch(/<svg [^>]*role="img" aria-labelledby="(\S+) (\S+)"/);
      expect(figure).toMatch(/<title id=.*<desc id=.*<figcaption>/s);
    }
  });

  it('puts the cautions before the first number of a table', () => {
    expect(page.indexOf('never a licence to exceed')).toBeGreaterThan(0);
    expect(page.indexOf('never a licence to exceed')).toBeLessThan(page.indexOf('<table'));
  });
});

describe('its tables', () => {
  it('show the speed of every row, with what limits it', () => {
    const full = page.slice(page.indexOf('id="speeds"'), page.indexOf('id="pictures"'));
    const rows = [...full.matchAll(/<tr>.*?<\/tr>/gs)].map(([row]) => textOf(row).trim()).slice(1);
    expect(rows).toHaveLength(table.rows.length);
    for (const [index, row] of table.rows.entries()) {
      const { layerHeight, lineWidth, speed, flow, acceleration, runUp, nozzleTemperature, bound } = row;
      expect(rows[index]).toContain(
        [layerHeight, lineWidth, speed, flow, acceleration, runUp, nozzleTemperature, bound].join(' '),
      );
    }
  });

  it('say in words that a number is weak', () => {
    const weak = tableWith({
      policy: { minimumBasis: { acceleration: { basis: 'measured', weaker: 'flag' } } },
    });
    const text = textOf(formatTableAsHtml(weak));
    expect(text).toMatch(/ motion claimed: weak basis /);
    expect(text).toContain('weak basis what limits the speed rests on less than the policy asks for');
  });

  it('name every input with its version and digest', () => {
    const text = textOf(page);
    for (const { kind, id, version, digest } of table.inputs) {
      expect(text).toContain(`${id} ${kind} ${version ?? 'none'} ${digest}`);
    }
  });

  it('write units as print does', () => {
    expect(textOf(page)).toContain('mm³/s');
    expect(textOf(page)).not.toMatch(/\d (Cel|mm3\/s)\b/);
  });
});

describe('text of strangers', () => {
  const hostile = [
    '<script>alert(1)</script>',
    '"onload="alert(1)',
    "' onmouseover='alert(1)",
    ']]>',
    '--><img src=x onerror=alert(1)>',
    '</style></title></svg><script>',
    '&lt;b&gt;&#x3c;',
    '\u202egnp.exe\u0000\u0007',
  ];

  it.each(hostile)('%j stays text', async (text) => {
    const html = formatTableAsHtml(withText(text));
    expect(await htmlComplaints(html)).toEqual([]);
    const tags = (source: string) => [...source.matchAll(/<\/?[a-zA-Z][^\s>]*/g)].map(([tag]) => tag);
    // As many elements of each kind as with a harmless text: none was opened, none closed.
    expect(tags(html)).toEqual(tags(formatTableAsHtml(withText('harmless'))));
    for (const invisible of ['\u0000', '\u0007', '\u202e']) expect(html).not.toContain(invisible);
  });

  it('is shown as it was written', () => {
    expect(formatTableAsHtml(withText('a < b & "c"'))).toContain('filament a &lt; b &amp; "c" on machine');
  });
});
