import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import type { SpeedTable } from '../../../src/tables/derive/speed-table.ts';
import {
  escapeOfName,
  extensionOf,
  formatTableByTemplate,
  readTemplate,
} from '../../../src/tables/template/fill-template.ts';
import type { ValueEscape } from '../../../src/text/escape.ts';
import { problemLine } from '../../../src/text/problem-text.ts';
import { tableWith } from '../derive/pairing-with.ts';

const table = tableWith();

function filled(template: string, target: ValueEscape = 'none', of: SpeedTable = table): string {
  const read = readTemplate(template);
  if (!read.ok) throw new Error(problems(template).join('\n'));
  const text = formatTableByTemplate(read.value, of, target);
  if (!text.ok) throw new Error(text.error.message);
  return text.value;
}

function problems(template: string): readonly string[] {
  const read = readTemplate(template);
  if (read.ok) return [];
  return read.error.map(
    (problem) =>
      `${problem.line === null ? '' : `${problem.line}:${problem.column}: `}${problemLine(problem)}`,
  );
}

describe('a template', () => {
  it('writes the variables of the table', () => {
    expect(filled('{{filament}} in {{nozzle}} ({{nozzleDiameter}} mm)')).toBe(
      'oakhollow/daisy-pla in hs-0.6 (0.6 mm)',
    );
  });

  it('repeats a section for every row, with the variables around it in reach', () => {
    const lines = filled('{{#rows}}\n{{machine}} {{feature}} {{speed}}\n{{/rows}}\n')
      .split('\n')
      .slice(0, -1);
    expect(lines).toEqual(table.rows.map(({ feature, speed }) => `plumstead/wren ${feature} ${speed}`));
  });

  it('gathers rows by feature and by bead', () => {
    expect(filled('{{#features}}{{feature}}:{{#rows}} {{speed}}{{/rows}}\n{{/features}}')).toBe(
      [...new Set(table.rows.map(({ feature }) => feature))]
        .map((feature) => {
          const speeds = table.rows.filter((row) => row.feature === feature).map(({ speed }) => speed);
          return `${feature}: ${speeds.join(' ')}\n`;
        })
        .join(''),
    );
    expect(filled('{{#beads}}{{layerHeight}}x{{lineWidth}} {{/beads}}')).toBe(
      '0.15x0.66 0.15x0.72 0.3x0.66 0.3x0.72 0.42x0.66 0.42x0.72 ',
    );
  });

  it('writes commas between items only', () => {
    expect(filled('{{#inputs}}{{kind}}{{^isLast}}, {{/isLast}}{{/inputs}}')).toBe(
      'machine, filament, policy, polymer, trial, trial',
    );
  });

  it('may have comments and tags of its own', () => {
    expect(filled('{{! said to nobody }}{{=<% %>=}}<% policy %> {{policy}}')).toBe('house {{policy}}');
  });

  it('writes the same bytes again', () => {
    const template = '{{#rows}}{{line}}\n{{/rows}}{{#warnings}}{{.}}{{/warnings}}';
    expect(filled(template)).toBe(filled(template));
  });
});

describe('an error names', () => {
  it.each([
    [
      'a misspelled variable',
      '\n  {{machin}}',
      '2:3: There is no variable "machin" here. Did you mean "machine"?',
    ],
    [
      'one of a list',
      'a\n{{speed}}',
      '2:1: There is no variable "speed" here. It stands inside of {{#caps}} or {{#rows}}.',
    ],
    ['one of a section', '{{#row}}{{/row}}', '1:1: There is no variable "row" here. Did you mean "rows"?'],
    ['one of an inverted section', '{{^isFast}}{{/isFast}}', '1:1: There is no variable "isFast" here.'],
    [
      'one without an escape',
      '{{{machin}}}',
      '1:1: There is no variable "machin" here. Did you mean "machine"?',
    ],
    ['another file', '{{> /etc/passwd}}', '1:1: A template reads no other file'],
    ['a dotted name', '{{rows.length}}', '1:1: There is no variable "rows.length" here.'],
    ['what every object has', '{{constructor}}', '1:1: There is no variable "constructor" here.'],
    ['the text itself where there is none', '{{.}}', '1:1: There is no variable "." here.'],
    ['a list that is written as it is', '{{rows}}', '1:1: "rows" is a list. Write {{#rows}}…{{/rows}}.'],
    [
      'texts that are written as they are',
      '{{&cautions}}',
      '"cautions" is a list. Write {{#cautions}}{{.}}{{/cautions}}.',
    ],
    [
      'the text of a list further out',
      '{{#cautions}}{{#rows}}{{.}}{{/rows}}{{/cautions}}',
      '1:23: There is no variable "." here.',
    ],
    ['a section that is not closed', 'a\n{{#rows}}', '2:10: Unclosed section "rows".'],
    ['a section that is closed twice', '{{/rows}}', '1:1: Unopened section "rows".'],
    ['a tag that is not closed', 'a\n{{machine', '2:10: Unclosed tag.'],
    ['tags that cannot be', '{{=x=}}', 'Invalid tags'],
  ])('%s', (_, template, message) => {
    expect(problems(template)).toHaveLength(1);
    expect(problems(template)[0]).toContain(message);
  });

  it('every unknown variable, in the order of the text', () => {
    expect(problems('{{a1}}\n{{#rows}}{{b1}}{{/rows}}\n{{c1}}').map((each) => each.slice(0, 5))).toEqual([
      '1:1: ',
      '2:10:',
      '3:1: ',
    ]);
  });

  it('a template that is too long', () => {
    expect(problems('x'.repeat(200_001))).toEqual([
      'A template holds 200000 characters at most, and this one has 200001. Shorten it.',
    ]);
  });

  it('sections too deep in each other', () => {
    const deep = `${'{{#rows}}'.repeat(5000)}${'{{/rows}}'.repeat(5000)}`;
    expect(problems(deep)).toEqual([
      expect.stringContaining('Sections stand at most 12 deep in each other.'),
    ]);
  });

  it('lists in lists that would write without end', () => {
    const read = readTemplate(`${'{{#rows}}'.repeat(8)}x${'{{/rows}}'.repeat(8)}`);
    const outcome = read.ok ? formatTableByTemplate(read.value, table, 'none') : read;
    expect(outcome).toMatchObject({
      ok: false,
      error: { code: 'tooMuchOutput', help: 'Do not repeat lists inside of lists.' },
    });
  });
});

describe('values are safe', () => {
  const hostile = { ...table, machine: `a <b> & "c" 'd', =1\r\n[evil]\u202e` };

  it('on one line, without an escape', () => {
    expect(filled('{{machine}}', 'none', hostile)).toBe(`a <b> & "c" 'd', =1 [evil]\\u{202e}`);
  });

  it.each(['html', 'xml'] as const)('in %s', (target) => {
    expect(filled('<p id="{{machine}}">', target, hostile)).toBe(
      '<p id="a &lt;b&gt; &amp; &quot;c&quot; &apos;d&apos;, =1 [evil]\\u{202e}">',
    );
  });

  it('in CSV, formulas included', () => {
    const csv = filled('{{machine}},{{filament}},{{nozzleDiameter}}', 'csv', {
      ...hostile,
      filament: '=1+1',
    });
    expect(parse(csv)).toEqual([[`a <b> & "c" 'd', =1 [evil]\\u{202e}`, "'=1+1", '0.6']]);
  });
});

describe('the name of a template', () => {
  it.each([
    ['sheet.xml', 'xml', 'xml'],
    ['sheet.XML.mustache', 'xml', 'xml'],
    ['page.htm', 'html', 'htm'],
    ['rows.csv', 'csv', 'csv'],
    ['sheet.ini', 'none', 'ini'],
    ['wall', 'none', 'txt'],
    ['wall.mustache', 'none', 'txt'],
  ])('%s asks for the escape %s and the ending %s', (name, target, ending) => {
    expect([escapeOfName(name), extensionOf(name)]).toEqual([target, ending]);
  });
});
