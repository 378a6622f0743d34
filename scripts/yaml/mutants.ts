import { type RandomSource, randomSource } from '../../src/statistics/random.ts';

/** Stretches that mean something to YAML, and such as readers are known to take differently. */
const bits = [
  ...['1: a', 'null: b', '~: c', 'true: d', '1.0: e', '0x10: f', '---', '...', '%YAML 1.2', '? a', ': b'].map(
    (line) => `\n${line}\n`,
  ),
  ...[
    ': ',
    '- ',
    '  ',
    '\n',
    '"',
    "'",
    '{',
    '}',
    '[',
    ']',
    ',',
    '#',
    ' #',
    '|',
    '>',
    '>-',
    '|+',
    '|2',
    '- - ',
  ],
  ...[
    '0x1F',
    '0o17',
    '1_000',
    '1e3',
    '1e999',
    '.5',
    '+1',
    '-0',
    '1.',
    '0b1',
    '12:30:45',
    '2026-01-01',
    '.inf',
    '.nan',
  ],
  ...[
    '123456789012345678901234567890',
    '0.1234567890123456789',
    '~',
    'null',
    'True',
    'NO',
    'yes',
    '=',
    '<<: x',
  ],
  ...[
    '{1: 2}',
    '{null: 1}',
    '"a": b',
    '[a: b]',
    '{a, b}',
    '{}',
    '[]',
    '""',
    '\\',
    '\\n',
    '\\x',
    '@',
    '`',
    '%',
    '-',
    '?',
  ],
  ...[
    ' !x',
    '&a ',
    '*a',
    '\u00a0',
    '\u2028',
    '\ufeff',
    '\t',
    '\r',
    '\u0000',
    'é',
    '😀',
    '<',
    '++',
    '__proto__: x',
  ],
];

/** Texts that are parts of others with one to three slips each; the same seed gives the same texts. */
export function* mutants(texts: readonly string[], count: number, seed: string): Generator<string> {
  const random = randomSource(seed);
  for (let made = 0; made < count; made++) {
    let text = part(pick(texts, random), random);
    for (let slips = 1 + below(3, random); slips > 0; slips--) text = slipped(text, random);
    yield text;
  }
}

function part(text: string, random: RandomSource): string {
  const lines = text.split('\n');
  const first = below(lines.length, random);
  return `${lines.slice(first, first + 1 + below(14, random)).join('\n')}\n`;
}

function slipped(text: string, random: RandomSource): string {
  const at = below(text.length + 1, random);
  const kind = below(3, random);
  if (kind === 0) return text.slice(0, at) + pick(bits, random) + text.slice(at);
  if (kind === 1) return text.slice(0, at) + text.slice(at + 1 + below(4, random));
  const from = below(text.length + 1, random);
  return text.slice(0, at) + text.slice(from, from + below(12, random)) + text.slice(at);
}

function pick(from: readonly string[], random: RandomSource): string {
  return from[below(from.length, random)] ?? '';
}

function below(count: number, random: RandomSource): number {
  return Math.floor(random.uniform() * count);
}
