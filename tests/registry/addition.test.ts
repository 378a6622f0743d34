import { describe, expect, it } from 'vitest';
import { benchMethods } from '../../src/bench/methods.ts';
import { addedKeys, addedPlace, additionsTo, extended } from '../../src/registry/addition.ts';
import type { AnyProfile, Profile } from '../../src/registry/profile.ts';
import { goodTexts, readText } from './good-documents.ts';

function profileOf<OfKind extends AnyProfile['kind']>(kind: OfKind, text: string): Profile<OfKind> {
  return readText(kind, text).profile as Profile<OfKind>;
}

const filament = profileOf('filament', goodTexts.filament);
const first = profileOf('addition', goodTexts.addition);
const second = profileOf('addition', goodTexts.addition.replace('40 mm3/s', '38 mm3/s'));
const flows = (profile: Profile<'filament'>) => profile.data.meltFlow?.map(({ value }) => value);

describe('a filament with additions', () => {
  it('states its own limits first, then those of each addition', () => {
    expect(flows(extended(filament, [first, second]))).toEqual([43, 40, 38]);
    expect(flows(filament)).toEqual([43]);
  });

  it.each(addedKeys)('may state %s in them', (key) => {
    const statement = { value: 1, basis: 'measured', evidence: 'x' } as const;
    const adding = { ...first, data: { ...first.data, [key]: [statement] } };
    expect(extended(filament, [adding]).data[key]?.at(-1)).toEqual(statement);
  });

  it('is itself without any', () => {
    expect(extended(filament, [])).toBe(filament);
  });

  it('keeps every other statement and its text', () => {
    const { data, source } = extended(filament, [first]);
    expect(source).toBe(filament.source);
    expect({ ...data, meltFlow: null }).toEqual({ ...filament.data, meltFlow: null });
  });

  it('knows which addition holds a statement, and where', () => {
    const place = (position: number) =>
      addedPlace(['meltFlow', position, 'value'], filament, [first, second]);
    expect([0, 1, 2, 3].map(place)).toEqual([
      null,
      { addition: first, path: ['meltFlow', 0, 'value'] },
      { addition: second, path: ['meltFlow', 0, 'value'] },
      null,
    ]);
    expect(addedPlace(['density', 1, 'value'], filament, [first])).toBeNull();
    expect(addedPlace(['meltFlow'], filament, [first])).toBeNull();
  });
});

it('additions belong to the filament that they name', () => {
  const additions = new Map([[first.id, first]]);
  expect(additionsTo('ashgrove/stagecraft-pla', additions)).toEqual([first]);
  expect(additionsTo('ashgrove/other', additions)).toEqual([]);
});

it('additions may hold every limit of a filament that a bench run gives, but what safety rests on', () => {
  const given = Object.values(benchMethods).flatMap(({ adoptable }) =>
    adoptable.flatMap(({ kind, place }) => (kind === 'filament' ? [place] : [])),
  );
  const ofSafety = [
    'nozzleTemperature',
    'dryingTime',
    'dryingTemperature',
    'fan',
    'diameter',
    'diameterTolerance',
  ];
  expect(given.filter((key) => !addedKeys.some((each) => each === key) && !ofSafety.includes(key))).toEqual(
    [],
  );
});
