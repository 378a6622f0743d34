import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { migrateText } from '../../../src/registry/migrations/migrate-text.ts';
import { migrations } from '../../../src/registry/migrations/migrations.ts';
import { sampleRegistry } from '../../sample-registry.ts';

const changed = (text: string) => {
  const migrated = migrateText(text);
  return migrated.ok ? migrated.value.text : migrated.error;
};

describe('0001', () => {
  test('puts the step of the scale under the scale, with its comments', () => {
    const old = `kind: trial
# The small scale
scaleResolution: 0.001 g # as its plate says
batch: 26-0117
`;
    expect(changed(old)).toBe(`kind: trial
# The small scale
scale:
  resolution: 0.001 g # as its plate says
batch: 26-0117
`);
  });

  test('keeps line ends', () => {
    expect(changed('kind: trial\r\nscaleResolution: 1 mg\r\n')).toBe(
      'kind: trial\r\nscale:\r\n  resolution: 1 mg\r\n',
    );
  });

  test('reads quoted keys', () => {
    expect(changed('kind: trial\n"scaleResolution": 1 mg\n')).toBe(
      'kind: trial\nscale:\n  resolution: 1 mg\n',
    );
  });

  test.each([
    ['a trial in the present shape', 'kind: trial\nscale: {resolution: 0.001 g}\n'],
    ['another kind', 'kind: job\nscaleResolution: 0.001 g\n'],
    ['the key in another place', 'kind: trial\nconditions: {scaleResolution: 0.001 g}\n'],
    ['a text that cannot be read', 'kind: trial\nscaleResolution: [0.001 g\n'],
    ['a list', '- kind: trial\n'],
    ['nothing', ''],
  ])('leaves %s as it is', (_, text) => {
    expect(migrateText(text)).toEqual({ ok: true, value: { text, applied: [] } });
  });

  test.each([
    ['both shapes', 'kind: trial\nscaleResolution: 1 mg\nscale: {resolution: 1 mg}\n'],
    ['braces', '{kind: trial, scaleResolution: 1 mg}\n'],
    ['a value on the next line', 'kind: trial\nscaleResolution:\n  1 mg\n'],
  ])('leaves %s to a person', (_, text) => {
    expect(migrateText(text)).toMatchObject({
      ok: false,
      error: {
        code: 'changeByHand',
        message: expect.stringContaining('"scaleResolution" could not be changed without touching more'),
      },
    });
  });
});

const word = fc.stringMatching(/^[a-z]{1,8}$/);
const line = fc.oneof(
  word.map((each) => `# ${each}`),
  fc.constant(''),
  fc.tuple(word, word, word).map(([a, b, c]) => `${a}: {${b}: [${c}]}`),
  fc.tuple(word, word).map(([a, b]) => `${a}:\n  - ${b} # ${a}`),
);
const oldLine = fc
  .tuple(fc.constantFrom('0.01 g', "'1 mg'", '"0,01 g"', '5', '{a: b}', '>-\n    1 g'), word)
  .map(([value, comment]) => `scaleResolution: ${value}${value.includes('\n') ? '' : ` # ${comment}`}`);
const newLine = fc.constantFrom('scale: {resolution: 0.01 g}', 'scale:\n  resolution: 1 mg', '# none');
const trial = (middle: fc.Arbitrary<string>) =>
  fc
    .tuple(fc.array(line), middle, fc.array(line), fc.constantFrom('\n', '\r\n'))
    .map(([above, own, below, end]) =>
      ['kind: trial', ...above, own, ...below, ''].join('\n').replaceAll('\n', end),
    );

test('migrating twice is migrating once', () => {
  fc.assert(
    fc.property(trial(fc.oneof(oldLine, newLine)), (text) => {
      const once = migrateText(text);
      fc.pre(once.ok);
      expect(migrateText(once.value.text)).toEqual({
        ok: true,
        value: { text: once.value.text, applied: [] },
      });
    }),
  );
});

test('what is new already stays byte for byte', () => {
  fc.assert(
    fc.property(trial(newLine), (text) => {
      expect(migrateText(text)).toEqual({ ok: true, value: { text, applied: [] } });
    }),
  );
});

test('everything but the old key stays byte for byte', () => {
  fc.assert(
    fc.property(trial(oldLine), (text) => {
      const once = migrateText(text);
      fc.pre(once.ok && once.value.applied.length > 0);
      expect(once.value.text.replace(/scale:\r?\n {2}resolution/, 'scaleResolution')).toBe(text);
    }),
  );
});

test('numbers of migrations go up', () => {
  const numbers = migrations.map(({ number }) => number);
  expect(numbers).toEqual([...new Set(numbers)].sort());
});

test('no profile of the sample registry needs a migration', () => {
  const text = sampleRegistry().read('trials/2026/wren-daisy-pla-230.yaml');
  expect(changed(text)).toBe(text);
});
