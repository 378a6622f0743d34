import { describe, expect, it } from 'vitest';
import type { CataloguedPairing, TestedLimit } from '../../src/site/catalogued-pairing.ts';
import { findPairings, type Question } from '../../src/site/find/find-pairings.ts';
import { fragmentOf, numberIn, stateOf } from '../../src/site/find/question-address.ts';
import { searchEntries, searchIndex } from '../../src/site/find/search.ts';

const nothing: Question = {
  policy: null,
  flow: null,
  temperature: null,
  material: null,
  diameter: null,
  polymer: null,
  basis: null,
  chamber: null,
  noise: null,
  price: null,
};

function limit(temperature: number, value: number, basis: TestedLimit['basis'] = 'measured'): TestedLimit {
  return { temperature, value, basis, interval: null, isSimulated: false, note: null };
}

function pairing(
  filament: string,
  limits: readonly TestedLimit[],
  rest: Partial<CataloguedPairing> = {},
): CataloguedPairing {
  const last = limits.at(-1) ?? limit(200, 1);
  return {
    ...{ policy: 'house', machine: 'plumstead/wren', nozzle: 'hs-0.4', filament, page: `${filament}.html` },
    ...{ machineName: 'Wren', filamentName: filament, polymer: 'PLA', nozzleDiameter: 0.4 },
    nozzleMaterial: 'hardenedSteel',
    chamber: { enclosed: false, heated: false },
    ...{ noise: 50, price: { amount: 900, currency: 'EUR' }, temperature: last.temperature },
    largestFlow: { limit: last.value, interval: null, basis: last.basis, isSimulated: false, note: null },
    ...{ limits, warnings: 0, ...rest },
  };
}

const daisy = pairing('oakhollow/daisy-pla', [limit(210, 24), limit(230, 28), limit(240, 31)]);
const clover = pairing('oakhollow/clover-petg', [limit(245, 40)], { polymer: 'PET-G', noise: null });
const ivy = pairing('oakhollow/ivy-pla', [limit(220, 50, 'claimed')], {
  nozzleMaterial: 'brass',
  nozzleDiameter: 0.6,
});
const all = [daisy, clover, ivy];

const ask = (question: Partial<Question>) => {
  const { found, nearly } = findPairings(all, { ...nothing, ...question });
  const named = (some: typeof found) =>
    some.map(({ pairing: { filament }, reason }) => [filament.split('/')[1], reason]);
  return { found: named(found), nearly: named(nearly) };
};

describe('a question by target', () => {
  it('that asks nothing finds all, the largest flow first', () => {
    expect(ask({})).toEqual({
      found: [
        ['ivy-pla', ''],
        ['clover-petg', ''],
        ['daisy-pla', ''],
      ],
      nearly: [],
    });
  });

  it('takes the largest limit at the temperatures that are allowed, not that of the table', () => {
    const { found } = findPairings([daisy], { ...nothing, flow: 25, temperature: 230 });
    expect(found[0]?.limit).toEqual(limit(230, 28));
    expect(ask({ flow: 29, temperature: 230 })).toEqual({
      found: [['ivy-pla', '50 mm³/s; tested at 220 °C']],
      nearly: [
        ['clover-petg', 'tested at 245 °C'],
        ['daisy-pla', '28 mm³/s'],
      ],
    });
  });

  it('says of what nearly holds what it lacks: a claim where a measurement is asked', () => {
    expect(ask({ basis: 'measured', flow: 30 })).toEqual({
      found: [
        ['clover-petg', '40 mm³/s; measured'],
        ['daisy-pla', '31 mm³/s; measured'],
      ],
      nearly: [['ivy-pla', 'claimed']],
    });
  });

  it('takes what is not known for lacking, and says so', () => {
    expect(ask({ noise: 55 }).nearly).toEqual([['clover-petg', 'sound level not known']]);
    expect(ask({ price: 899 })).toMatchObject({ found: [], nearly: [{}, {}, {}] });
    expect(ask({ price: 900 }).found).toHaveLength(3);
  });

  it.each<[keyof Question, Partial<Question>, string[]]>([
    ['material', { material: 'brass' }, ['ivy-pla']],
    ['diameter', { diameter: 0.6 }, ['ivy-pla']],
    ['polymer', { polymer: 'PET-G' }, ['clover-petg']],
    ['chamber', { chamber: 'enclosed' }, []],
    ['policy', { policy: 'other' }, []],
  ])('asks for the %s', (_, question, names) => {
    expect(ask(question).found.map(([name]) => name)).toEqual(names);
  });
});

describe('the address', () => {
  it('holds the whole state and gives it back', () => {
    const state = {
      typed: 'stagecraft pla & co',
      question: { ...nothing, flow: 25.5, basis: 'measured' as const, chamber: 'heated' as const },
      chosen: ['pairings/a/b.html', 'pairings/c.html'],
    };
    expect(stateOf(`#${fragmentOf(state)}`)).toEqual(state);
  });

  it('asks nothing where it says something amiss', () => {
    const fragment = '#flow=fast&basis=guessed&chamber=cold&diameter=1e999&noise=-1';
    expect(stateOf(fragment)).toEqual({ typed: '', question: nothing, chosen: [] });
  });

  it('names four pairings at most, each once', () => {
    const pages = ['a', 'a', 'b', 'c', 'd', 'e'].map((page) => `pairing=${page}`).join('&');
    expect(stateOf(pages).chosen).toEqual(['a', 'b', 'c', 'd']);
  });

  it.each([
    ['25', 25],
    ['0,6', 0.6],
    [' 0.4 ', 0.4],
    ['', null],
    ['25 mm', null],
    ['NaN', null],
  ])('reads %j as %s', (text, number) => {
    expect(numberIn(text)).toBe(number);
  });
});

describe('a search', () => {
  const entry = (name: string, words = '') => ({ kind: 'filament', name, page: `${name}.html`, words });
  const index = searchIndex([
    entry('Stagecraft PLA', 'ashgrove/stagecraft-pla'),
    entry('Stagecraft PETG', 'ashgrove/stagecraft-petg'),
    entry('Lantern', 'The nozzle falls 9 K at full fan'),
    entry('Rigging ABS'),
  ]);
  const names = (typed: string) => searchEntries(index, typed).map(({ name }) => name);

  it.each([
    ['lantern', ['Lantern']],
    ['LAN', ['Lantern']],
    ['stagecraft', ['Stagecraft PLA', 'Stagecraft PETG']],
    ['petg stage', ['Stagecraft PETG']],
    ['nozzle fan', ['Lantern']],
    ['craft', ['Stagecraft PLA', 'Stagecraft PETG']],
    ['', []],
    ['pear', []],
  ])('for %j finds %j', (typed, found) => {
    expect(names(typed)).toEqual(found);
  });

  it.each([
    ['lantren', 'Lantern'],
    ['stagcraft', 'Stagecraft PLA'],
    ['stqgecraft', 'Stagecraft PLA'],
    ['riging', 'Rigging ABS'],
    ['rigginh', 'Rigging ABS'],
  ])('for %j, with a slip of the keys, finds %s', (typed, found) => {
    expect(names(typed)).toContain(found);
  });

  it('takes no short word for another', () => {
    expect(names('abc')).toEqual([]);
    expect(names('pls')).toEqual([]);
  });

  it('shows no more than is asked', () => {
    const many = searchIndex(Array.from({ length: 50 }, (_, number) => entry(`Filament ${number}`)));
    expect(searchEntries(many, 'filament', 5)).toHaveLength(5);
  });
});
