import { describe, expect, it } from 'vitest';
import type { CataloguedPairing, TestedLimit } from '../../src/site/catalogued-pairing.ts';
import type { CatalogueData } from '../../src/site/data/catalogue-data.ts';
import { packPairings, unpackPairings } from '../../src/site/data/packed-pairings.ts';
import type { Question } from '../../src/site/find/find-pairings.ts';
import { untestedPairings } from '../../src/site/find/untested-pairings.ts';

const nozzle = { feeds: 1.75, claims: [{ flow: 30, polymer: 'PLA', temperature: 220 }] };
const data: CatalogueData = {
  policies: ['house'],
  machines: [
    {
      ...{ id: 'plumstead/wren', name: 'Wren', chamber: { enclosed: true, heated: false }, noise: 50 },
      price: { amount: 900, currency: 'EUR' },
      nozzles: [
        { id: 'br-0.4', diameter: 0.4, material: 'brass', ...nozzle },
        { id: 'hs-0.6', diameter: 0.6, material: 'hardenedSteel', ...nozzle, claims: [] },
      ],
    },
    {
      ...{ id: 'plumstead/robin', name: 'Robin', chamber: { enclosed: false, heated: false } },
      ...{ noise: null, price: null },
      nozzles: [
        {
          ...{ id: 'br-0.4', diameter: 0.4, material: 'brass', feeds: 1.75 },
          claims: [{ flow: 45, polymer: null, temperature: null }],
        },
      ],
    },
  ],
  filaments: [
    filament('oakhollow/daisy-pla', 'PLA', { low: 200, high: 230 }),
    filament('oakhollow/ivy-pla', 'PLA', { low: 225, high: 245 }),
    filament('oakhollow/clover-petg', 'PET-G', { low: 230, high: 250 }),
    { ...filament('oakhollow/thick-pla', 'PLA', null), diameter: 2.85 },
  ],
};

function filament(id: string, polymer: string, window: { low: number; high: number } | null) {
  return { id, name: id, polymer, diameter: 1.75, window };
}

const limit = (temperature: number, value: number, rest: Partial<TestedLimit> = {}): TestedLimit => ({
  ...{ temperature, value, interval: { low: value - 1, high: value + 0.5 }, basis: 'measured' },
  ...{ isSimulated: true, note: null, ...rest },
});

const daisy: CataloguedPairing = {
  ...{ policy: 'house', machine: 'plumstead/wren', nozzle: 'hs-0.6', filament: 'oakhollow/daisy-pla' },
  page: 'pairings/house/plumstead/wren/hs-0.6/oakhollow/daisy-pla.html',
  ...{ machineName: 'Wren', filamentName: 'oakhollow/daisy-pla', polymer: 'PLA', nozzleDiameter: 0.6 },
  ...{ nozzleMaterial: 'hardenedSteel', chamber: { enclosed: true, heated: false }, noise: 50 },
  ...{ price: { amount: 900, currency: 'EUR' }, temperature: 222 },
  largestFlow: { limit: 27.4, interval: null, basis: 'measured', isSimulated: true, note: null },
  limits: [limit(215, 24.1), limit(230, 28.25)],
  warnings: 3,
};
const claimed: CataloguedPairing = {
  ...daisy,
  ...{ nozzle: 'br-0.4', nozzleDiameter: 0.4, nozzleMaterial: 'brass', temperature: 220, warnings: 0 },
  page: 'pairings/house/plumstead/wren/br-0.4/oakhollow/daisy-pla.html',
  largestFlow: { limit: 30, interval: null, basis: 'claimed', isSimulated: false, note: 'A lower bound' },
  limits: [limit(220, 30, { interval: null, basis: 'claimed', isSimulated: false, note: 'A lower bound' })],
};

describe('pairings that a browser loads', () => {
  it('are the ones that were packed', () => {
    const packed = JSON.parse(JSON.stringify(packPairings('house', [daisy, claimed], data)));
    expect(unpackPairings(packed, data)).toEqual([daisy, claimed]);
  });

  it('leave out what the data of the catalogue do not hold, and nothing else', () => {
    const packed = packPairings('house', [{ ...daisy, nozzle: 'none' }, claimed], data);
    expect(unpackPairings(packed, data)).toEqual([claimed]);
  });
});

describe('what would hold a question if it were measured', () => {
  const nothing: Question = {
    ...{ policy: 'house', flow: null, temperature: null, material: null, diameter: null },
    ...{ polymer: null, basis: null, chamber: null, noise: null, price: null },
  };
  const ask = (question: Partial<Question>, tested: readonly CataloguedPairing[] = [daisy]) =>
    untestedPairings(data, tested, { ...nothing, ...question }).map(
      ({ machine, nozzle: { id }, flow, filaments }) =>
        `${machine.name} ${id} ${flow}: ${filaments.map((each) => each.id.slice(10)).join(', ')}`,
    );

  it('is each filament of the family that is printed at the temperature of the statement, the largest flow first', () => {
    expect(ask({ flow: 25 })).toEqual([
      'Robin br-0.4 45: daisy-pla, ivy-pla, clover-petg',
      'Wren br-0.4 30: daisy-pla',
    ]);
  });

  it('is nothing that has a page', () => {
    expect(ask({ flow: 25 }, [daisy, claimed])).toEqual(['Robin br-0.4 45: daisy-pla, ivy-pla, clover-petg']);
  });

  it.each<[Partial<Question>, string[]]>([
    [{ flow: 31 }, ['Robin br-0.4 45: daisy-pla, ivy-pla, clover-petg']],
    [{ flow: 46 }, []],
    [{ temperature: 215 }, ['Robin br-0.4 45: daisy-pla']],
    [{ polymer: 'PET-G' }, ['Robin br-0.4 45: clover-petg']],
    [{ chamber: 'enclosed' }, ['Wren br-0.4 30: daisy-pla']],
    [{ noise: 55 }, ['Wren br-0.4 30: daisy-pla']],
    [{ price: 899 }, []],
    [{ material: 'hardenedSteel' }, []],
    [{ diameter: 0.6 }, []],
  ])('for %j is %j', (question, found) => {
    expect(ask(question)).toEqual(found);
  });
});
