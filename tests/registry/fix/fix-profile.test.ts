import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isScalar } from 'yaml';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { fixProfile } from '../../../src/registry/fix/fix-profile.ts';
import { checkShape } from '../../../src/registry/form/check-shape.ts';
import { shapes } from '../../../src/registry/generated/shapes.ts';
import type { ReadDocument } from '../../../src/registry/profile.ts';
import { leavesOf, type QuantityShape } from '../../../src/registry/shape.ts';
import { sourceText } from '../../../src/registry/source-text.ts';
import { applyEdits, type TextEdit } from '../../../src/registry/yaml/text-edit.ts';
import { placeAt, readYaml } from '../../../src/registry/yaml/yaml-document.ts';
import { unitsOf } from '../../../src/units/unit-table.ts';
import { runs } from '../../property-runs.ts';

// Every profile of the demo and of the sample registry: they are spelled and ordered as they should be.
const profiles = loadFolders(
  ['../../../profiles', '../../fixtures/registry'].map((path) =>
    fileURLToPath(new URL(path, import.meta.url)),
  ),
).registry.documents;

type Choose = (from: readonly string[]) => string;

function read(text: string, like: ReadDocument): ReadDocument {
  const { document: yaml, problems } = readYaml(text);
  if (yaml === null || problems.length > 0)
    throw new Error(`unreadable: ${JSON.stringify(problems)}\n${text}`);
  return {
    ...like,
    written: yaml.value,
    yaml,
    source: sourceText(like.source.path, like.source.relativePath, text),
  };
}

function fixed(text: string, like: ReadDocument): string {
  return fixProfile(read(text, like))?.text ?? text;
}

function dataOf(text: string, like: ReadDocument): unknown {
  const { hits, data } = checkShape(like.kind, read(text, like).written);
  expect(hits).toEqual([]);
  return data;
}

/** Another spelling of a quantity, one that leaves no doubt; `numbers` says whether its numbers may change form. */
function respelled(canonical: string, shape: QuantityShape, choose: Choose, numbers: boolean): string {
  const units = unitsOf(shape.dimension);
  const spellings = (code: string) => [code, ...(units.find((unit) => unit.code === code)?.aliases ?? [])];
  if (shape.form === 'unit') return choose(spellings(canonical));
  const [, low = '', high, code = ''] = /^(\S+?)(?:\.\.(\S+))? (\S+)$/.exec(canonical) ?? [];
  const unit = choose(spellings(code));
  const gaps = [' ', '  ', '\u00a0', '\u202f'];
  const gap = choose(/^\d/.test(unit) ? gaps : [...gaps, '']);
  const last = (number: string) => (numbers ? otherNumber(number, choose, true) : number);
  if (high === undefined) return `${last(low)}${gap}${unit}`;
  const first = numbers ? otherNumber(low, choose, false) : low;
  const second = last(high);
  const between = second.startsWith('.') ? ['.. '] : ['..', ' .. ', '.. '];
  return `${first}${choose(between)}${second}${gap}${unit}`;
}

function otherNumber(number: string, choose: Choose, mayEndInPoint: boolean): string {
  const digits = number.replace(/^-/, '');
  const bare = digits.startsWith('0.')
    ? choose([digits, digits.slice(1), `00${digits}`])
    : choose([digits, `0${digits}`]);
  const ended = mayEndInPoint && /^\d+$/.test(bare) ? choose([bare, `${bare}.`]) : bare;
  return choose(number.startsWith('-') ? ['-', '\u2212'] : ['', '+']) + ended;
}

interface Respelled {
  /** The text with other spellings, and the text as fixing should leave it: the same quotes, the canonical spellings. */
  readonly text: string;
  readonly respelled: string;
}

function respellAll(text: string, like: ReadDocument, choose: Choose, numbers: boolean): Respelled {
  const document = read(text, like);
  const pairs = [...leavesOf('quantity', shapes[like.kind], document.written)].flatMap(
    ({ path, shape, value }) => {
      const node = placeAt(document.yaml, path)?.value;
      if (!isScalar(node) || !node.range || typeof value !== 'string') return [];
      const [start, end] = node.range;
      const other = respelled(value, shape, choose, numbers);
      const mark = text[start] === "'" || text[start] === '"' ? text[start] : choose(['"', "'"]);
      return choose(['keep', 'change']) === 'keep'
        ? []
        : [[other, value].map((spelling): TextEdit => ({ start, end, text: mark + spelling + mark }))];
    },
  );
  return {
    text: applyEdits(
      text,
      pairs.flatMap(([change]) => change ?? []),
    ),
    respelled: applyEdits(
      text,
      pairs.flatMap(([, fix]) => fix ?? []),
    ),
  };
}

/** The keys at the root with their lines; the line for editors stays on top. */
function blocksOf(text: string): { header: string; blocks: string[] } {
  const [header = '', ...blocks] = text.split(/^(?=[a-zA-Z]\w*:)/m);
  return { header, blocks };
}

function commented(text: string, choose: Choose): string {
  const { header, blocks } = blocksOf(text);
  const withComments = blocks.map((block, index) => {
    const above = choose(['', `# About ${index}.\n`, `\n# About ${index}: x\n#  and more\n`]);
    const beside = choose(['', `  # beside ${index}`]);
    return above + (/^\w+:(?: [\w./]+)?\n/.test(block) ? block.replace('\n', `${beside}\n`) : block);
  });
  return header + withComments.join('').replace(/^\n/, '');
}

/** The blocks of a commented text, each with the comments above its key. */
function shuffled(text: string, order: readonly number[]): string {
  const lines = text.split(/(?<=\n)/);
  const header = lines.findIndex((line) => !line.startsWith('# yaml-language-server'));
  const blocks: string[] = [];
  let open = '';
  for (const line of lines.slice(header)) {
    const isLead = /^(?:#|\n)/.test(line);
    if (isLead && /^[a-zA-Z]\w*:/m.test(open)) {
      blocks.push(open);
      open = '';
    } else if (/^[a-zA-Z]\w*:/.test(line) && /^[a-zA-Z]\w*:/m.test(open)) {
      blocks.push(open);
      open = '';
    }
    open += line;
  }
  blocks.push(open);
  const ranked = blocks.map((block, index) => ({ block, rank: order[index % order.length] ?? 0 }));
  const moved = ranked.sort((a, b) => a.rank - b.rank).map(({ block }) => block);
  return lines.slice(0, header).join('') + moved.join('').replace(/^\n+/, '\n');
}

const aPath = fc.constantFrom(...profiles.map(({ source }) => source.path));
const anOrder = fc.array(fc.nat(1000), { minLength: 30, maxLength: 30 });

function check(property: (profile: ReadDocument, order: readonly number[], choose: Choose) => void): void {
  fc.assert(
    fc.property(aPath, anOrder, fc.gen(), (path, order, g) => {
      const profile = profiles.find(({ source }) => source.path === path);
      if (profile !== undefined) property(profile, order, (from) => g(fc.constantFrom, ...from));
    }),
    { numRuns: runs(150) },
  );
}

describe('fixing a profile', () => {
  it('finds nothing in profiles that are spelled and ordered as they should be', () => {
    expect(profiles.length).toBeGreaterThan(50);
    expect(
      profiles.filter((profile) => fixProfile(profile) !== null).map(({ source }) => source.path),
    ).toEqual([]);
  });

  it('leaves no problems found, so that fixing twice is fixing once', () => {
    check((profile, order, choose) => {
      const { text } = respellAll(
        shuffled(commented(profile.source.text, choose), order),
        profile,
        choose,
        true,
      );
      expect(fixProfile(read(fixed(text, profile), profile))).toBeNull();
    });
  });

  it('does not change what the profile says', () => {
    check((profile, order, choose) => {
      const { text } = respellAll(shuffled(profile.source.text, order), profile, choose, false);
      expect(dataOf(fixed(text, profile), profile)).toEqual(dataOf(text, profile));
    });
  });

  it('gives numbers of another form the value that they have', () => {
    check((profile, _, choose) => {
      const { text } = respellAll(profile.source.text, profile, choose, true);
      expect(dataOf(fixed(text, profile), profile)).toEqual(dataOf(profile.source.text, profile));
    });
  });

  it('changes nothing but the spelling of quantities', () => {
    check((profile, _, choose) => {
      const { text, respelled } = respellAll(commented(profile.source.text, choose), profile, choose, true);
      expect(fixed(text, profile)).toBe(respelled);
    });
  });

  it('brings keys that were moved back to their place, each with its comments', () => {
    check((profile, order, choose) => {
      const tidy = commented(profile.source.text, choose);
      expect(fixed(shuffled(tidy, order), profile).replaceAll(/\n+/g, '\n')).toBe(
        tidy.replaceAll(/\n+/g, '\n'),
      );
    });
  });

  it('keeps CRLF line ends', () => {
    check((profile, order, choose) => {
      const { text } = respellAll(
        shuffled(commented(profile.source.text, choose), order),
        profile,
        choose,
        true,
      );
      const windows = text.replaceAll('\n', '\r\n');
      expect(fixed(windows, profile)).toBe(fixed(text, profile).replaceAll('\n', '\r\n'));
    });
  });
});

const job = profiles.find(({ kind }) => kind === 'job');

function fixedJob(text: string): string {
  if (job === undefined) throw new Error('there is no job');
  return fixed(text, job);
}

describe('the order of keys', () => {
  it.each([
    ['a comment directly above a key goes with it', '# name\nname: X\nid: x\n', 'id: x\n# name\nname: X\n'],
    ['a comment beside a value goes with it', 'name: X # name\nid: x\n', 'id: x\nname: X # name\n'],
    [
      'an indented comment belongs to the value above it',
      'name:\n  X\n  # name\nid: x\n',
      'id: x\nname:\n  X\n  # name\n',
    ],
    ['a comment above a blank line stays on top', '# file\n\nname: X\nid: x\n', '# file\n\nid: x\nname: X\n'],
    [
      'a licence line stays on top',
      '# SPDX-License-Identifier: CC0-1.0\nname: X\nid: x\n',
      '# SPDX-License-Identifier: CC0-1.0\nid: x\nname: X\n',
    ],
    ['a comment below all keys stays at the end', 'name: X\nid: x\n# end\n', 'id: x\nname: X\n# end\n'],
    ['marks of the document stay where they are', '---\nname: X\nid: x\n...\n', '---\nid: x\nname: X\n...\n'],
    ['a file without a last line end gets one', 'name: X\nid: x', 'id: x\nname: X\n'],
    ['an empty value moves as well', 'name:\n# id\nid: x\n', '# id\nid: x\nname:\n'],
    [
      'text over several lines moves as it is',
      'notice: |\n  a\n\n  b\nid: x\n',
      'id: x\nnotice: |\n  a\n\n  b\n',
    ],
    [
      'blank lines that belong to a text stay with it',
      'notice: |+\n  a\n\nid: x\n',
      'id: x\nnotice: |+\n  a\n\n',
    ],
    [
      'an unknown key stays behind the one before it',
      'name: X\nother: 1\nid: x\n',
      'id: x\nname: X\nother: 1\n',
    ],
  ])('%s', (_, text, wanted) => {
    expect(fixedJob(text)).toBe(wanted);
    expect(fixedJob(wanted)).toBe(wanted);
  });

  it.each([
    ['a flow mapping', '{name: X, id: x}\n'],
    ['keys with an anchor', '&a name: X\nid: x\n'],
    ['keys with a question mark', '? name\n: X\nid: x\n'],
  ])('is left alone in %s', (_, text) => {
    expect(fixedJob(text)).toBe(text);
  });
});

describe('the spelling of a quantity', () => {
  const line = (value: string) => `layers: ${value}\n`;

  it('keeps quotes', () => {
    expect(fixedJob(line('"120{count}"'))).toBe(line('"120 {count}"'));
    expect(fixedJob(line("'120{count}'"))).toBe(line("'120 {count}'"));
  });

  it('gets quotes where its brackets would mean something else', () => {
    expect(fixedJob("{layers: '120{count}'}\n")).toBe("{layers: '120 {count}'}\n");
    expect(fixedJob(line('120{count}'))).toBe(line('120 {count}'));
    expect(fixedJob('features: {infill: {lineWidth: 1in}}\n')).toBe(
      "features: {infill: {lineWidth: '1 [in_i]'}}\n",
    );
  });

  it.each([
    '1,240 {count}',
    '12O {count}',
    '120',
    '120 apples',
    '0x20 {count}',
    '1_000 {count}',
    '1 000 {count}',
  ])('is left alone in %s, which is not read', (value) => {
    expect(fixedJob(line(value))).toBe(line(value));
  });
});
