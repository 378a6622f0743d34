import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readYaml } from '../../../src/registry/yaml/yaml-document.ts';
import { runs } from '../../property-runs.ts';

/** `RULE LINE:COLUMN MESSAGE` of each problem. */
function problems(text: string): string[] {
  return readYaml(text).problems.map(
    ({ rule, span, message }) => `${rule} ${span.line}:${span.column} ${message}`,
  );
}

const notClosed = 'What is opened here is not closed, or the lines inside it are not indented';
const oneValue = 'A key with its value stands where a single value is expected';
const noTags = 'Tags (`!name`) are not read';

describe('a text that is not read has one finding that says why:', () => {
  test.each([
    ['a tab', 'kind: machine\nbed:\n\tx: 1\n', 'syntax/yaml 3:1 A tab stands where YAML needs spaces'],
    ['a tab, with CRLF', 'bed:\r\n\tx: 1\r\n', 'syntax/yaml 2:1 A tab stands where YAML needs spaces'],
    [
      'both sides of a merge',
      'id: a\n<<<<<<< HEAD\nx: 1\n=======\nx: 2\n>>>>>>> bench\n',
      'syntax/yaml 2:1 Both sides of a merge stand here, from line 2 to line 6',
    ],
    [
      'a mark of a merge alone',
      'kind: machine\nid: a\n>>>>>>> bench\nname: b\n',
      'syntax/yaml 3:1 A mark of a merge is left here',
    ],
    [
      'notes above the first key',
      'to be checked again\n# 12 March\nkind: machine\nid: a\nname: b\n',
      'syntax/yaml 1:1 This text is no key with a value, so that nothing below it can be read',
    ],
    [
      'notes right above the first key',
      'to be checked again\nkind: machine\nid: a\n',
      'syntax/yaml 1:1 This line has no colon, so that it is read as one text with the next line',
    ],
    [
      'a bracket too many',
      'kind: machine\n]\nid: a\nname: b\n',
      'syntax/yaml 2:1 The document has ended above this line',
    ],
    ['a quote left open', 'kind: "machine\nid: a\nname: b\n', `syntax/yaml 1:7 ${notClosed}`],
    ['a single quote left open', "name: 'it''s\nid: a\n", `syntax/yaml 1:7 ${notClosed}`],
    ['a bracket left open', 'a: 1\nsensors: [x, y\nid: a\n', `syntax/yaml 2:10 ${notClosed}`],
    ['a brace left open', 'sensors: [x, {y: 1]\n', `syntax/yaml 1:14 ${notClosed}`],
    ['a document in brackets left open', '{kind: machine\n', `syntax/yaml 1:1 ${notClosed}`],
    ['lines in brackets, not indented', 'a: [1,\n2\n]\n', `syntax/yaml 1:4 ${notClosed}`],
    ['a key too deep', 'kind: machine\n id: a\n', `syntax/yaml 1:7 ${oneValue}`],
    ['a colon in plain text', 'note: see: page 3\n', `syntax/yaml 1:7 ${oneValue}`],
    [
      'a key too shallow',
      'a:\n  - x\n b: 1\n',
      'syntax/yaml 3:1 The indentation does not fit the lines around it',
    ],
    [
      'a colon left out',
      'kind machine\nid: a\n',
      'syntax/yaml 1:1 This line has no colon, so that it is read as one text with the next line',
    ],
    [
      'a unit in brackets within braces',
      'a: {value: 446 [degF]}\n',
      'syntax/yaml 1:16 A bracket stands in text without quotes',
    ],
    [
      'a reserved sign',
      'name: @x\n',
      'syntax/yaml 1:7 This is not valid YAML: Plain value cannot start with reserved character @',
    ],
    [
      'two documents',
      'kind: machine\n---\nkind: job\n',
      'syntax/yaml 2:1 The file holds more than one document',
    ],
    [
      'a document after the end of one',
      'a: 1\n...\nb: 2\n',
      'syntax/yaml 3:1 The file holds more than one document',
    ],
    ['a key that is a list', '? [a]\n: 1\n', 'syntax/yaml 1:3 A key must be text'],
    ['a tag', 'a: 1\nb: !secret x\n', `syntax/yaml 2:4 ${noTags}`],
    ['a tag whose name is about tables', 'a: !table x\n', `syntax/yaml 1:4 ${noTags}`],
    ['a tag with a handle', 'a: !e!x 1\n', `syntax/yaml 1:4 ${noTags}`],
    ['a binary value', 'a: !!binary aGk=\n', `syntax/yaml 1:13 ${noTags}`],
    ['a set', 'a: !!set {x}\n', `syntax/yaml 1:10 ${noTags}`],
    ['text by tag', 'a: !!str 5\n', `syntax/yaml 1:10 ${noTags}`],
    ['an alias', 'a: &x 1\nb: *x\n', 'syntax/alias 2:4 Aliases (`*name`) are not read'],
    ['an alias to nothing', 'a: *x\n', 'syntax/alias 1:4 Aliases (`*name`) are not read'],
    [
      'a merge of an alias',
      'a: &m {x: 1}\nb:\n  <<: *m\n',
      'syntax/alias 3:7 Aliases (`*name`) are not read',
    ],
    ['nothing', '', 'syntax/empty 1:1 The file is empty'],
    ['spaces and comments alone', '\n# later\n\n', 'syntax/empty 1:1 The file is empty'],
  ])('%s', (_, text, expected) => {
    expect(problems(text)).toEqual([expected]);
    expect(readYaml(text).document).toBeNull();
  });

  test('each problem says what to do', () => {
    for (const text of [
      'a:\n\tb: 1\n',
      'a: "x\n',
      'a: *x\n',
      '',
      'a: 1\na: 2\n',
      'name: @x\n',
      '['.repeat(50),
    ]) {
      expect(readYaml(text).problems[0]?.help).toMatch(/^[A-Z].*\.$/);
    }
  });

  test('slips on several lines are all shown', () => {
    expect(
      problems('a: !x 1\nb: @c\nd: *e\n')
        .map((each) => each.slice(0, 17))
        .sort(),
    ).toEqual(['syntax/alias 3:4 ', 'syntax/yaml 1:4 T', 'syntax/yaml 2:4 T']);
  });
});

describe('a key that stands twice', () => {
  test('is reported at its second place, and the rest is still read', () => {
    expect(problems('density: 1\nname: x\ndensity: 2\n')).toEqual([
      'syntax/duplicate-key 3:1 The key "density" stands twice in the same mapping',
    ]);
    expect(readYaml('density: 1\nname: x\ndensity: 2\n').document).not.toBeNull();
  });

  test('is the same key in other quotes', () => {
    expect(problems(`"a": 1\n'a': 2\n`)).toEqual([
      'syntax/duplicate-key 2:1 The key "a" stands twice in the same mapping',
    ]);
  });

  test('is seen in brackets, and told once with the times that it stands there', () => {
    expect(problems('x: {b: 1, b: 2, b: 3}\n')).toEqual([
      'syntax/duplicate-key 1:11 The key "b" stands 3 times in the same mapping',
    ]);
  });

  test('in two mappings is two keys', () => {
    expect(problems('x: {b: 1}\ny: {b: 2}\n')).toEqual([]);
  });

  test('cannot hide in a large file', { tags: 'long' }, () => {
    const keys = Array.from({ length: 100_000 }, (_, index) => `k${index}:`);
    expect(problems([...keys, 'k7:'].join('\n'))).toEqual([
      'syntax/duplicate-key 100001:1 The key "k7" stands twice in the same mapping',
    ]);
  });
});

describe('nesting', () => {
  const tooDeep = 'syntax/depth';
  const flow = (depth: number) => `a: ${'['.repeat(depth - 1)}${']'.repeat(depth - 1)}\n`;
  const block = (depth: number) => Array.from({ length: depth }, (_, at) => `${' '.repeat(at)}a:\n`).join('');

  test.each([
    ['in brackets', flow],
    ['by indentation', block],
    ['by dashes', (depth: number) => `${'- '.repeat(depth)}x\n`],
  ])('24 levels %s are read, 25 are not', (_, nested) => {
    expect(problems(nested(24))).toEqual([]);
    expect(problems(nested(25))).toEqual([
      expect.stringMatching(/^syntax\/depth \d+:\d+ The document is nested deeper than 24 levels$/),
    ]);
  });

  test('is pointed at where it becomes too deep', () => {
    expect(problems(block(40))[0]).toContain(`${tooDeep} 25:26`);
    expect(problems(flow(40))[0]).toContain(`${tooDeep} 1:27`);
  });

  test.each([
    ['brackets', '['.repeat(100_000)],
    ['brackets that close', `${'['.repeat(100_000)}${']'.repeat(100_000)}`],
    ['braces', '{a: '.repeat(100_000)],
    ['dashes', `${'- '.repeat(100_000)}x`],
    ['question marks', `${'? '.repeat(100_000)}x`],
  ])('100 000 deep in %s is one finding and no crash', (_, text) => {
    expect(problems(text)).toEqual([expect.stringContaining(tooDeep)]);
  });
});

describe('what is read as it stands', () => {
  const value = (text: string) => {
    const { document } = readYaml(text);
    return document === null ? undefined : document.value;
  };

  test('a merge key is a key like any other, which no schema knows', () => {
    expect(value('b:\n  <<: {x: 1}\n')).toEqual({ b: { '<<': { x: 1 } } });
  });

  test('a number as key is text', () => {
    expect(value('5: a\n')).toEqual({ '5': 'a' });
  });

  test('words of older YAML are text, even where the file asks for it', () => {
    expect(value('a: yes\nb: 1_000\nc: 2026-03-12\nd: 1:30\n')).toEqual({
      a: 'yes',
      b: '1_000',
      c: '2026-03-12',
      d: '1:30',
    });
    expect(value('%YAML 1.1\n---\na: yes\n')).toEqual({ a: 'yes' });
  });

  test('a key named __proto__ is a key of its own', () => {
    const read = value('__proto__: {x: 1}\n');
    expect(Object.keys(read as object)).toEqual(['__proto__']);
    expect(Object.getPrototypeOf(read)).toBe(Object.prototype);
  });
});

describe('any text', () => {
  const scrap = fc.constantFrom(
    ...'abc:-?[]{}&*!|>\'"%@`#, \t\n\r\uFEFF\u2028',
    ': ',
    '- ',
    '\n  ',
    '---\n',
    '<<: ',
  );
  const text = fc.oneof(
    fc.string({ unit: scrap, maxLength: 60 }),
    fc.string({ unit: 'binary', maxLength: 60 }),
  );

  test('is read, or has a problem at a place inside of it', { tags: 'long' }, () => {
    fc.assert(
      fc.property(text, (written) => {
        const { document, problems: found } = readYaml(written);
        const lines = written.split('\n');
        expect(document !== null || found.length > 0).toBe(true);
        for (const { span } of found) {
          expect(span.line).toBeLessThanOrEqual(lines.length);
          expect(span.column).toBeLessThanOrEqual((lines[span.line - 1]?.length ?? 0) + 2);
        }
        if (document !== null) expect(() => document.value).not.toThrow();
      }),
      { numRuns: runs(3000) },
    );
  });
});
