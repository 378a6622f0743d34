import { expect, test } from 'vitest';
import { findFittedPairing } from '../../src/knowledge/pairing.ts';
import { formatQuirk, formatQuirkLine, quirkFacts, quirkSections } from '../../src/knowledge/quirk-words.ts';
import { type Quirk, quirkConcerns, quirksOf } from '../../src/knowledge/quirks.ts';
import { loadFiles } from '../../src/registry/load-files.ts';
import type { Registry } from '../../src/registry/registry.ts';
import { clover, cloverTrial, wren } from '../rules/edited-sample.ts';
import { sampleTexts } from '../sample-texts.ts';

/** A note in one line of YAML. */
function note(date: string, what: string, concerns = ''): string {
  const about = concerns === '' ? '' : `, concerns: {${concerns}}`;
  return `  - {date: '${date}', what: ${what}, effect: The bead thins${about}}\n`;
}

/** The sample registry with notes at the end of some files. */
function registryWith(notes: Readonly<Record<string, string>>): Registry {
  const texts = sampleTexts();
  for (const [file, text] of Object.entries(notes))
    texts.set(file, `${texts.get(file) ?? addition}fieldNotes:\n${text}`);
  return loadFiles([{ folder: '', texts }]).registry;
}

const additionFile = 'additions/clover-on-our-bench.yaml';
const addition = `kind: addition
id: clover-on-our-bench
version: 1.0.0
filament: oakhollow/clover-petg
`;

function quirks(registry: Registry, nozzle = 'hs-0.6', trials?: readonly string[]): Quirk[] {
  const pairing = findFittedPairing(registry, {
    machine: 'plumstead/wren',
    filament: 'oakhollow/clover-petg',
    nozzle,
  });
  if (!pairing.ok) throw new Error(pairing.error.message);
  return quirksOf(registry, pairing.value, trials);
}

const whats = (found: readonly Quirk[]) => found.map(({ what }) => what);

test('notes of machine, filament, addition and trial stand together, the newest first', () => {
  const registry = registryWith({
    [wren]: note('2026-03-02', 'of the machine'),
    [clover]: note('2026-05-02', 'of the filament'),
    [additionFile]: note('2026-04-02', 'of the addition'),
    [cloverTrial]: note('2026-02-12', 'of the trial') + note('2026-02-12', 'of the trial too'),
  });
  const found = quirks(registry);
  expect(whats(found)).toEqual([
    'of the filament',
    'of the addition',
    'of the machine',
    'of the trial',
    'of the trial too',
  ]);
  expect(found.map(({ of }) => of.kind)).toEqual(['filament', 'addition', 'machine', 'trial', 'trial']);
});

test('notes of one day are sorted by kind and id', () => {
  const registry = registryWith({
    [wren]: note('2026-03-02', 'of the machine'),
    [clover]: note('2026-03-02', 'of the filament'),
  });
  expect(whats(quirks(registry))).toEqual(['of the filament', 'of the machine']);
});

test('a note about another nozzle, and a trial with another nozzle, are left out', () => {
  const registry = registryWith({
    [wren]: note('2026-03-02', 'of the wide one', 'nozzle: hs-0.6') + note('2026-03-01', 'of both'),
    [clover]: note('2026-03-02', 'of the wide one too', 'machine: plumstead/wren, nozzle: hs-0.6'),
    [cloverTrial]: note('2026-02-12', 'of the trial'),
  });
  expect(whats(quirks(registry, 'hs-0.4'))).toEqual(['of both']);
  expect(whats(quirks(registry))).toHaveLength(4);
});

test('trials can be named', () => {
  const registry = registryWith({ [cloverTrial]: note('2026-02-12', 'of the trial') });
  expect(quirks(registry, 'hs-0.6', [])).toEqual([]);
  expect(whats(quirks(registry, 'hs-0.4', ['wren-clover-petg-245', 'wren-clover-petg-245']))).toEqual([
    'of the trial',
  ]);
});

const [hot] = quirks(
  registryWith({
    [wren]: note(
      '2026-03-02',
      'It oozes.',
      'nozzle: hs-0.6, aboveFlow: 38 mm3/s, nozzleTemperature: 473.15..533.15 K',
    ),
  }),
);

test('what a note concerns is in canonical units', () => {
  expect(hot?.concerns?.nozzle).toBe('hs-0.6');
  expect(hot?.concerns?.aboveFlow).toBe(38);
  expect(hot?.concerns?.nozzleTemperature?.low).toBeCloseTo(200, 9);
  expect(hot?.concerns?.nozzleTemperature?.high).toBeCloseTo(260, 9);
});

test.each([
  { flow: 38, nozzleTemperature: 230, shows: false },
  { flow: 38.1, nozzleTemperature: 230, shows: true },
  { flow: 40, nozzleTemperature: 265, shows: false },
  { flow: 40, shows: false },
  { nozzleTemperature: 230, shows: false },
])('it shows above its flow and within its temperatures only: %j', ({ shows, ...settings }) => {
  expect(hot && quirkConcerns(hot, settings)).toBe(shows);
});

test('a note that names neither belongs to no row', () => {
  const [plain] = quirks(registryWith({ [wren]: note('2026-03-02', 'It hums', 'nozzle: hs-0.6') }));
  expect(plain && quirkConcerns(plain, { flow: 100, nozzleTemperature: 230 })).toBe(false);
});

test('it is told in a line and in full', () => {
  expect(hot && formatQuirkLine(hot)).toBe('2026-03-02  It oozes. -> The bead thins');
  expect(hot && formatQuirk(hot)).toBe(
    '2026-03-02, plumstead/wren, nozzle hs-0.6, above 38 mm3/s, at 200..260 Cel: It oozes. The bead thins.',
  );
  expect(hot && formatQuirk({ ...hot, concerns: null, wayRound: 'Go\n  slower.' })).toBe(
    '2026-03-02, plumstead/wren: It oozes. The bead thins. -> Go slower.',
  );
});

test('programs get every quantity with its unit', () => {
  expect(hot && quirkFacts(hot).concerns).toEqual({
    nozzle: 'hs-0.6',
    aboveFlow: { value: 38, unit: 'mm3/s' },
    nozzleTemperature: { low: { value: 200, unit: 'Cel' }, high: { value: 260, unit: 'Cel' } },
  });
});

test('those of several pairings stand together, each once', () => {
  const found = quirks(
    registryWith({ [wren]: note('2026-03-02', 'old'), [clover]: note('2026-05-02', 'new') }),
  );
  expect(quirkSections([...found, ...found])).toMatchObject([
    {
      heading: 'Quirks, the newest first',
      blocks: [
        {
          items: [
            '2026-05-02, oakhollow/clover-petg: new. The bead thins.',
            '2026-03-02, plumstead/wren: old. The bead thins.',
          ],
        },
      ],
    },
  ]);
  expect(quirkSections([])).toEqual([]);
});
