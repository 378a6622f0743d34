import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonText } from '../../src/text/json-text.ts';
import { pathLines, terminalText } from '../../src/text/terminal-text.ts';
import { dangersIn } from './dangers.ts';

const red = '\u001B[31m';

describe('a text for the terminal', () => {
  it.each([
    ['an escape sequence', 'a\u001B[2Jb', 'a\\u{1b}[2Jb'],
    ['a C1 control', 'a\u009B2Jb', 'a\\u{9b}2Jb'],
    ['a change of direction', 'a\u202Eb', 'a\\u{202e}b'],
    ['a tag character', 'a\u{E0041}b', 'a\\u{e0041}b'],
    ['a carriage return in a line', 'good\rbad', 'good\\u{d}bad'],
    [
      'a workflow command',
      '::error::a\n \t::set-env name=A::b\n',
      '\\u{3a}:error::a\n \t\\u{3a}:set-env name=A::b\n',
    ],
    ['a command inside of a line', 'a ##[error]b ##vso[c]d', 'a \\u{23}#[error]b \\u{23}#vso[c]d'],
    ['a colour where none is printed', `${red}a`, '\\u{1b}[31ma'],
  ])('shows %s', (_, text, shown) => {
    expect(terminalText(text)).toBe(shown);
    expect(dangersIn(terminalText(text))).toEqual([]);
  });

  it.each([
    'a\tb\n\nc: d::e\n',
    'a,b\r\n1,"2"\r\n',
    '## Heading\n\n[a](b#c) `x::y`\n',
    '⠁⣿ 43 mm³/s · 5 °C — ≥\n',
  ])('leaves %j as it is', (text) => expect(terminalText(text)).toBe(text));

  it('keeps colours where they are printed, but nothing that hides or moves', () => {
    expect(terminalText(`${red}a\u001B[39m\u001B[8mb\u001B[1A`, { colour: true })).toBe(
      `${red}a\u001B[39m\\u{1b}[8mb\\u{1b}[1A`,
    );
  });

  it('leaves workflow commands where the report is made of them', () => {
    expect(terminalText('::error file=a::b\u001B\n', { workflowCommands: true })).toBe(
      '::error file=a::b\\u{1b}\n',
    );
  });

  it('is harmless whatever it was, and stays as it is then', () => {
    const nasty = fc.constantFrom(
      '\n',
      '\r',
      '::',
      ' ',
      '##',
      '#',
      '[',
      'error',
      '\u001B',
      red,
      '\u2028',
      '\u{E0001}',
    );
    const text = fc.array(fc.oneof(nasty, fc.string({ unit: 'binary' }))).map((parts) => parts.join(''));
    fc.assert(
      fc.property(text, (written) => {
        const shown = terminalText(written);
        expect(dangersIn(shown)).toEqual([]);
        expect(terminalText(shown)).toBe(shown);
      }),
    );
  });
});

it('a path stays on its line', () => {
  expect(pathLines(['a\n::error::b', 'c'])).toBe('a\\u{a}::error::b\nc\n');
});

it('JSON is harmless and says the same', () => {
  fc.assert(
    fc.property(fc.jsonValue({ stringUnit: 'binary' }), (value) => {
      expect(dangersIn(jsonText(value))).toEqual([]);
      expect(JSON.parse(jsonText(value))).toEqual(JSON.parse(JSON.stringify(value)));
    }),
  );
  expect(jsonText({ '\u202E##[a': '\u{E0041}' })).toBe('{\n  "\\u202e\\u0023#[a": "\\udb40\\udc41"\n}\n');
});
