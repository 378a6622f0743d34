import { expect, test } from 'vitest';
import { loadFolders } from '../../src/host/load-registry.ts';
import {
  basisWords,
  isSimulated,
  originHeading,
  originOf,
  originSentence,
} from '../../src/knowledge/origin.ts';
import { statementsOf } from '../../src/registry/statement.ts';

const { registry } = loadFolders(['profiles']);
const lantern = { kind: 'machine', id: 'brackwater/lantern' } as const;
const trials = ['lantern-stagecraft-pla-230', 'lantern-stagecraft-pla-220'];

test('simulated trials and invented profiles are named once each, in order', () => {
  const profiles = [lantern, { kind: 'filament', id: 'ashgrove/stagecraft-pla' } as const, lantern];
  expect(originOf(registry, { profiles, trials: [...trials, ...trials] })).toEqual({
    simulated: ['lantern-stagecraft-pla-220', 'lantern-stagecraft-pla-230'],
    invented: [{ kind: 'filament', id: 'ashgrove/stagecraft-pla' }, lantern],
  });
});

test('what is real, and what the registry does not hold, is not named', () => {
  const profiles = [
    { kind: 'polymer', id: 'PLA' },
    { kind: 'source', id: 'crawford-1998' },
    { kind: 'machine', id: 'brackwater/candle' },
  ] as const;
  const origin = originOf(registry, { profiles, trials: ['no-such-trial'] });
  expect(origin).toEqual({ simulated: [], invented: [] });
  expect(originHeading(origin)).toBeNull();
  expect(originSentence(origin)).toBeNull();
});

test.each([
  {
    parts: { profiles: [lantern], trials },
    heading: 'Simulated readings and invented profiles',
    sentence:
      'Simulated readings (trials lantern-stagecraft-pla-220 and lantern-stagecraft-pla-230) and invented profiles (machine brackwater/lantern): no bench has measured this.',
  },
  {
    parts: { profiles: [lantern] },
    heading: 'Invented profiles',
    sentence: 'Invented profiles (machine brackwater/lantern): no such thing exists.',
  },
  {
    parts: { trials: trials.slice(1) },
    heading: 'Simulated readings',
    sentence: 'Simulated readings (trial lantern-stagecraft-pla-220): no bench has measured this.',
  },
])('the head of a page says: $heading', ({ parts, heading, sentence }) => {
  const origin = originOf(registry, parts);
  expect(originHeading(origin)).toBe(heading);
  expect(originSentence(origin)).toBe(sentence);
});

test('many are counted instead of named', () => {
  const origin = originOf(registry, { trials: registry.trial.keys() });
  expect(originSentence(origin)).toBe(
    `Simulated readings (${registry.trial.size} trials): no bench has measured this.`,
  );
});

test('a statement that a simulated trial shows is measured (simulated)', () => {
  const filament = registry.filament.get('ashgrove/stagecraft-pla')!;
  const statements = [...statementsOf(filament)].map(({ statement }) => statement);
  const words = statements.map((each) => basisWords(each.basis, isSimulated(each, registry)));
  expect(new Set(words)).toEqual(new Set(['claimed', 'assumed', 'measured (simulated)']));
});

test('every profile of the demo but polymers and real sources says that it is invented', () => {
  const real = [...registry.source.values()].filter(({ data }) => data.invented === undefined);
  expect(real.map(({ id }) => id)).toContain('crawford-1998');
  expect(real.every(({ data }) => data.notice === undefined)).toBe(true);
  const others = registry.profiles.filter(({ kind }) => !['polymer', 'source', 'trial'].includes(kind));
  expect(others.filter(({ data }) => !('invented' in data && data.invented)).map(({ id }) => id)).toEqual([]);
});
