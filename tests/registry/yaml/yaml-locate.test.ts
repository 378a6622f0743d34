import { describe, expect, test } from 'vitest';
import type { Path } from '../../../src/registry/shape.ts';
import { sourceText } from '../../../src/registry/source-text.ts';
import { locate, readYaml, type YamlDocument } from '../../../src/registry/yaml/yaml-document.ts';

function read(raw: string): { document: YamlDocument; text: string } {
  const { text } = sourceText('a.yaml', 'a.yaml', raw);
  const { document, problems } = readYaml(text);
  if (document === null) throw new Error(problems[0]?.message);
  return { document, text };
}

/** `LINE:COLUMN` of the start, and the text between start and end. */
function seen(raw: string, path: Path, part: 'key' | 'value'): string {
  const { document, text } = read(raw);
  const span = locate(document, path, part);
  const starts = [0, ...[...text.matchAll(/\n/g)].map(({ index }) => index + 1)];
  const offset = (line: number, column: number) => (starts[line - 1] ?? Number.NaN) + column - 1;
  const marked = text.slice(offset(span.line, span.column), offset(span.endLine, span.endColumn));
  return `${span.line}:${span.column} ${marked}`;
}

const machine = `# a comment
kind: machine

bed:
  temperatureLimit: # another
    - value: 110 Cel
      basis: claimed
    - {value: 100 Cel, basis: "assumed"}
envelope: {x: 300 mm, y: [1, {z: two words}]}
`;

describe.each([
  ['a key', ['kind'], 'key', '2:1 kind'],
  ['its value', ['kind'], 'value', '2:7 machine'],
  ['a key over a list', ['bed', 'temperatureLimit'], 'key', '5:3 temperatureLimit'],
  ['a key in an item', ['bed', 'temperatureLimit', 0, 'basis'], 'key', '7:7 basis'],
  ['the first key of an item', ['bed', 'temperatureLimit', 0, 'value'], 'key', '6:7 value'],
  ['its value', ['bed', 'temperatureLimit', 0, 'value'], 'value', '6:14 110 Cel'],
  ['a key of a flow map', ['bed', 'temperatureLimit', 1, 'basis'], 'key', '8:24 basis'],
  ['a quoted value', ['bed', 'temperatureLimit', 1, 'basis'], 'value', '8:31 "assumed"'],
  ['a flow map in a list', ['bed', 'temperatureLimit', 1], 'value', '8:7 {value: 100 Cel, basis: "assumed"}'],
  [
    'an item has no key, so its value',
    ['bed', 'temperatureLimit', 1],
    'key',
    '8:7 {value: 100 Cel, basis: "assumed"}',
  ],
  ['a flow list', ['envelope', 'y'], 'value', '9:26 [1, {z: two words}]'],
  ['a scalar in a flow list', ['envelope', 'y', 0], 'value', '9:27 1'],
  ['a value deep in flow', ['envelope', 'y', 1, 'z'], 'value', '9:34 two words'],
] as const)('%s', (_, path, part, expected) => {
  test(`${path.join('/')} ${part}`, () => {
    expect(seen(machine, path, part)).toBe(expected);
  });

  test('the same with CRLF line ends', () => {
    expect(seen(machine.replaceAll('\n', '\r\n'), path, part)).toBe(expected);
  });

  test('the same behind a byte-order mark', () => {
    expect(seen(`\uFEFF${machine}`, path, part)).toBe(expected);
  });
});

test('a block item ends with its last value, not with the next one', () => {
  expect(seen(machine, ['bed', 'temperatureLimit', 0], 'value')).toMatch(
    /^6:7 value: 110 Cel\n {6}basis: claimed\s*$/,
  );
});

test('a byte-order mark takes no column', () => {
  expect(seen('\uFEFFkind: machine\n', ['kind'], 'key')).toBe('1:1 kind');
  expect(seen('\uFEFFkind: machine\n', ['kind'], 'value')).toBe('1:7 machine');
});

describe('text of several bytes before the place', () => {
  test('columns count UTF-16 code units, as editors do', () => {
    expect(seen('{name: Prüfstand, size: 3}\n', ['size'], 'key')).toBe('1:19 size');
    expect(seen('{name: "🧵", size: 3}\n', ['size'], 'key')).toBe('1:14 size');
  });

  test('lines count no separators but those of YAML 1.2', () => {
    expect(seen('name: "a\u2028b\u0085c"\nsize: 3\n', ['size'], 'value')).toBe('2:7 3');
  });
});

describe('an anchor without an alias', () => {
  test('is not part of the place of its value', () => {
    expect(seen('kind: &k machine\nname: x\n', ['kind'], 'value')).toBe('1:10 machine');
    expect(seen('kind: &k machine\nname: x\n', ['name'], 'value')).toBe('2:7 x');
  });
});

describe('a place that is not there points at the key of its nearest parent:', () => {
  test.each([
    ['a missing key in a mapping', ['bed', 'heater'], '4:1 bed'],
    ['a missing key deeper down', ['bed', 'heater', 'power', 3], '4:1 bed'],
    ['an item behind the last', ['bed', 'temperatureLimit', 2], '5:3 temperatureLimit'],
    ['a key inside a scalar', ['kind', 'x'], '2:1 kind'],
    [
      'a missing key in an item without a key',
      ['bed', 'temperatureLimit', 1, 'date'],
      '8:7 {value: 100 Cel, basis: "assumed"}',
    ],
  ] as const)('%s', (_, path, expected) => {
    expect(seen(machine, path, 'value')).toBe(expected);
    expect(seen(machine, path, 'key')).toBe(expected);
  });

  test('a key without a value stands for its value', () => {
    expect(seen('kind:\nid: a\n', ['kind'], 'value')).toMatch(/^1:/);
  });

  test('at the root, the first character', () => {
    const { document } = read(machine);
    const first = { line: 1, column: 1, endLine: 1, endColumn: 1 };
    expect(locate(document, [], 'value')).toEqual(first);
    expect(locate(document, ['nowhere'], 'key')).toEqual(first);
  });
});

test('a key of digits is found like any other', () => {
  expect(seen('a: 1\n"7": {b: 2}\n', ['7', 'b'], 'value')).toBe('2:10 2');
});
