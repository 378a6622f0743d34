import type { RandomSource } from '../../src/statistics/random.ts';

/** What readers of any text are known to stumble over, whatever its format. */
const oddities = [
  ...['', '\n', '\r', '\r\n', '\t', ' ', '\u00a0', '\u2028', '\ufeff', '\0', '\u001b[2J', '\u202e', '\ud800'],
  ...['"', '""', "'", '`', '\\', '/', '../', ',', ';', '|', '#', '%', '&', '*', '!', '@', '=', '<', '>', '~'],
  ...[
    '{',
    '}',
    '[',
    ']',
    '(',
    ')',
    '{{',
    '}}',
    '{{{',
    '{{#',
    '{{/',
    '{{^',
    '{{!',
    '{{=',
    '=}}',
    '{{>',
    '{{&',
  ],
  ...[
    '0',
    '-0',
    '1e999',
    '-1',
    '1e-320',
    '.',
    '..',
    '1.',
    '.5',
    '1,5',
    '1_000',
    '0x10',
    '٣',
    '９',
    '∞',
    'NaN',
  ],
  ...['null', 'true', '[]', '{}', '- ', ': ', '? ', '---', '...', '<<: *a', '&a ', '*a', '!!set ', '|', '>-'],
  ...[
    '__proto__',
    'constructor',
    'toString',
    'hasOwnProperty',
    'é',
    '😀',
    'e\u0301',
    '::error::',
    '##[group]',
  ],
  ...[
    ' Cel',
    ' mm3/s',
    ' °F',
    '..',
    '%',
    '2026-02-30',
    '<<<<<<< ',
    '=======',
    '>>>>>>> ',
    '<script>',
    '=cmd()',
  ],
];

/** A text with one slip in it or several, some of which bring stretches of other texts or say a stretch many times. */
export function mutantOf(texts: readonly string[], random: RandomSource): string {
  let text = pick(texts, random);
  do text = slipped(text, texts, random);
  while (random.uniform() < 0.4);
  return text;
}

const slips: readonly ((text: string, texts: readonly string[], random: RandomSource) => string)[] = [
  (text, _, random) => spliced(text, 0, pick(oddities, random), random),
  (text, _, random) => spliced(text, 1 + below(6, random), pick(oddities, random), random),
  (text, _, random) => spliced(text, 1 + below(12, random), '', random),
  (text, _, random) => spliced(text, 0, stretchOf(text, 40, random), random),
  (text, texts, random) =>
    spliced(text, below(40, random), stretchOf(pick(texts, random), 120, random), random),
  (text, _, random) => spliced(text, 0, stretchOf(text, 8, random).repeat(1 + below(60, random)), random),
  (text, _, random) => spliced(text, 1, String.fromCharCode(below(0x10000, random)), random),
  (text, _, random) => text.slice(0, below(text.length + 1, random)),
  exchangedLines,
  otherNumber,
];

function slipped(text: string, texts: readonly string[], random: RandomSource): string {
  return pick(slips, random)(text, texts, random);
}

function spliced(text: string, cut: number, put: string, random: RandomSource): string {
  const at = below(text.length + 1, random);
  return text.slice(0, at) + put + text.slice(at + cut);
}

function stretchOf(text: string, longest: number, random: RandomSource): string {
  const from = below(text.length + 1, random);
  return text.slice(from, from + 1 + below(longest, random));
}

function exchangedLines(text: string, _: readonly string[], random: RandomSource): string {
  const lines = text.split('\n');
  const [one, other] = [below(lines.length, random), below(lines.length, random)];
  return lines
    .map((line, index) => lines[index === one ? other : index === other ? one : index] ?? line)
    .join('\n');
}

function otherNumber(text: string, _: readonly string[], random: RandomSource): string {
  const numbers = [...text.matchAll(/\d+(?:\.\d+)?/g)];
  if (numbers.length === 0) return text;
  const { index, 0: number } = pick(numbers, random);
  const others = [`-${number}`, `${number}0`, `${number}000000`, `0.${number}`, `${number}e9`, '0', ''];
  return text.slice(0, index) + pick(others, random) + text.slice(index + number.length);
}

function pick<Item>(from: readonly Item[], random: RandomSource): Item {
  const item = from[below(from.length, random)];
  if (item === undefined) throw new Error('there is nothing to pick from');
  return item;
}

function below(count: number, random: RandomSource): number {
  return Math.floor(random.uniform() * count);
}
