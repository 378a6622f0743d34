import { describe, expect, it } from 'vitest';
import { cautions, code, leftColumns, list, paragraph, section, table } from '../../src/text/document.ts';
import { formatText } from '../../src/text/format-text.ts';
import { strong, styled } from '../../src/text/inline.ts';
import { documentWith, sampleDocument } from './sample-document.ts';

describe('formatText', () => {
  it('sets the answer first, a blank line between blocks, and holds sections together', () => {
    expect(formatText(sampleDocument)).toBe(`Lantern feeds 42.7 mm³/s.

Flow of Lantern

Measured at 230 °C; run \`meltbounds reduce\` again, as shown

nozzle  flow [mm³/s]
hs-0.4          30.4
hs-0.6             9

Reasons
  - plain
  + the bed goes to 110 °C
  1. first
  2. second
  pairing  Lantern
  on       Monday
  melt  the hot end melts no more
    a: 1
      b: 2

feature  layer 0.2 mm, line 0.4 mm  layer 0.2 mm, line 0.5 mm
infill   slow                                              10
infill   fast
bridge   slow                                               5

time    1
all     10 min

peak    1
travel  80 mm/s

* *
 *
How the flow falls.

Warning: simulated readings

Caution: Hot ends burn.
`);
  });

  it('breaks sentences to 80 columns, further lines below the beginning of the first', () => {
    const sentence = 'word '.repeat(20).trim();
    const lines = formatText({
      title: null,
      blocks: [section('Reasons', [list([sentence])]), cautions([sentence])],
    }).split('\n');
    expect(lines.slice(0, 3)).toEqual([
      'Reasons',
      `  - ${'word '.repeat(15).trim()}`,
      `    ${'word '.repeat(5).trim()}`,
    ]);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it.each([
    ['a number and its unit', 'the limit is 42.7 mm³/s', 22, ['the limit is', '42.7 mm³/s']],
    ['code', 'then run `meltbounds reduce`', 24, ['then run', '`meltbounds reduce`']],
    [
      'a word that is wider than the line',
      'see profiles/trials/2026/a.yaml',
      10,
      ['see', 'profiles/trials/2026/a.yaml'],
    ],
  ])('keeps %s on one line', (_, sentence, width, lines) => {
    const text = formatText({ title: null, blocks: [paragraph(sentence)] }, { width });
    expect(text).toBe(`${lines.join('\n')}\n`);
  });

  it('colours only where it is told to', () => {
    const document = {
      title: 'title',
      blocks: [paragraph([styled('error', 'wrong'), ' and ', strong('bold')])],
    };
    expect(formatText(document)).not.toContain('\u001b');
    expect(formatText(document, { colour: true })).toContain('\u001b[31mwrong\u001b[39m');
  });

  it('shows what would steer a terminal, and keeps a text on its line', () => {
    const text = formatText(documentWith('a\u001b[2J\u202eb\nc'));
    expect(text).not.toContain('\u001b');
    expect(text).not.toContain('\u202e');
    expect(text.split('\n')[0]).toBe('a\\u{1b}[2J\\u{202e}b c');
  });

  it('keeps the lines of code as they are', () => {
    const line = 'word '.repeat(30).trim();
    expect(formatText({ title: null, blocks: [code(`${line}\n\n    x\n`)] })).toBe(`  ${line}\n\n      x\n`);
  });
});

describe('a table on a terminal', () => {
  const columns = [
    { heading: 'filament', align: 'left' },
    { heading: 'ferrywright/skiff', align: 'left' },
    { heading: 'tollwick/steeple', align: 'left' },
  ] as const;

  it('numbers headings that are wider than their cells where it is too wide', () => {
    const wide = table(columns, [['stagecraft-pla', '15.5', '86.1']]);
    expect(formatText({ title: null, blocks: [wide] }, { width: 40 })).toBe(`1  ferrywright/skiff
2  tollwick/steeple

filament        1     2
stagecraft-pla  15.5  86.1
`);
  });

  it('stacks the columns that do not fit, each time behind the first one', () => {
    const columns = leftColumns('machine', 'first', 'second', 'third');
    const rows = [
      ['lantern', 'one', 'two', 'three'],
      ['skiff', 'four', 'five', 'six'],
    ];
    expect(
      formatText({ title: null, blocks: [table(columns, rows)] }, { width: 24 }),
    ).toBe(`machine  first  second
lantern  one    two
skiff    four   five

machine  third
lantern  three
skiff    six
`);
  });

  it('breaks the cells of a column that may wrap', () => {
    const wide = table(
      [columns[0], { heading: 'why', align: 'left', wraps: true }],
      [
        ['stagecraft-pla', 'the dryer is fixed at 50 °C'],
        ['x', ''],
      ],
    );
    expect(formatText({ title: null, blocks: [wide] }, { width: 32 })).toBe(`filament        why
stagecraft-pla  the dryer is
                fixed at 50 °C
x
`);
  });

  it('lines up cells with wide characters', () => {
    const rows = [
      ['木', 1],
      ['ab', 2],
    ];
    const names = [columns[0], { heading: 'n', align: 'right' } as const];
    expect(formatText({ title: null, blocks: [table(names, rows)] })).toBe(
      'filament  n\n木        1\nab        2\n',
    );
  });
});
