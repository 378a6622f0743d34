import { describe, expect, it } from 'vitest';
import { code, list, paragraph, table } from '../../src/text/document.ts';
import { formatMarkdown } from '../../src/text/format-markdown.ts';
import { documentWith, sampleDocument } from './sample-document.ts';

describe('formatMarkdown', () => {
  it('gives every block its form', () => {
    expect(formatMarkdown(sampleDocument)).toBe(`# Flow of Lantern

Lantern feeds 42.7 mm³/s.

Measured at **230 °C**; run \`meltbounds reduce\` again, [as shown](how%20to.md)

| nozzle | flow [mm³/s] |
| ------ | -----------: |
| hs-0.4 |         30.4 |
| hs-0.6 |            9 |

## Reasons

- plain
- suits: the bed goes to 110 °C

1. first
2. second

- pairing: Lantern
- on: Monday

- melt: the hot end melts no more

\`\`\`yaml
a: 1
  b: 2
\`\`\`

| feature | layer 0.2 mm, line 0.4 mm | layer 0.2 mm, line 0.5 mm |
| ------- | ------------------------- | ------------------------: |
| infill  | slow                      |                        10 |
| infill  | fast                      |                           |
| bridge  | slow                      |                         5 |

| time | 1      |
| ---- | ------ |
| all  | 10 min |

| peak   | 1       |
| ------ | ------- |
| travel | 80 mm/s |

\`\`\`
* *
 *
\`\`\`

How the flow falls.

- **Warning:** simulated readings

- **Caution:** Hot ends burn.
`);
  });

  it('begins at the level that it is told', () => {
    const headings = formatMarkdown(sampleDocument, { level: 3 }).match(/^#+ .*$/gm);
    expect(headings).toEqual(['### Flow of Lantern', '#### Reasons']);
  });

  it('shows a text of a stranger as text everywhere', () => {
    const text = '<b> @bench #1 [a](http://b.example) *c* |d| \\`e';
    const markdown = formatMarkdown(documentWith(text)).replace(/```\n.*?\n```/s, '');
    expect(markdown).toContain(
      '\\<b\\> @&#8203;bench \\#&#8203;1 \\[a\\](http&#58;//b.example) \\*c\\* \\|d\\| \\\\\\`e',
    );
    expect(markdown.replace(/\\[^\n]|@?&#\d+;/g, '')).not.toMatch(/[<>@`]|\]\(|:\/\//);
  });

  it.each([
    ['- a', '\\- a'],
    ['+ a', '\\+ a'],
    ['12. a', '12\\. a'],
    ['---', '\\---'],
    ['===', '\\==='],
    ['-10.9 mm³/s', '-10.9 mm³/s'],
    ['1.5 mm', '1.5 mm'],
  ])('opens no list, rule or heading by a text that begins with "%s"', (written, shown) => {
    expect(formatMarkdown({ title: null, blocks: [paragraph(written), list([written])] })).toBe(
      `${shown}\n\n- ${shown}\n`,
    );
  });

  it.each([
    ['between single backticks', 'run `a_b <c>` now', 'run `a_b <c>` now'],
    ['not between double ones', '`` <b> `', '\\`\\` \\<b\\> \\`'],
    ['nor after a lone one', 'a ` <b>', 'a \\` \\<b\\>'],
  ])('takes a text for code %s', (_, written, shown) => {
    expect(formatMarkdown({ title: null, blocks: [paragraph(written)] })).toBe(`${shown}\n`);
  });

  it('keeps a bar in its cell, in code too', () => {
    const rows = [['a|b'], ['`c|d`']];
    expect(formatMarkdown({ title: null, blocks: [table([{ heading: 'n', align: 'left' }], rows)] })).toBe(
      ['| n      |', '| ------ |', '| a\\|b   |', '| `c\\|d` |', ''].join('\n'),
    );
  });

  it('fences code that holds fences', () => {
    expect(formatMarkdown({ title: null, blocks: [code('```\nx\n```\n')] })).toBe(
      '````\n```\nx\n```\n````\n',
    );
  });
});
