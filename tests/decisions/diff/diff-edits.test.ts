import { describe, expect, it } from 'vitest';
import { diffRegistries } from '../../../src/decisions/diff/diff-registries.ts';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { type SampleRegistry, sampleRegistry } from '../../sample-registry.ts';

const daisy = 'filaments/oakhollow/daisy-pla.yaml';
const wren = 'machines/plumstead/wren.yaml';
const house = 'policies/house.yaml';
const pla = 'polymers/PLA.yaml';

type Change = (registry: SampleRegistry) => void;

/** What a change of the sample registry means, after another one that both sides have. */
function bumpAfter(before: Change, change: Change) {
  const registry = sampleRegistry();
  before(registry);
  const base = loadFolders(['profiles'], registry.cwd);
  change(registry);
  const { profiles, tables } = diffRegistries(base, loadFolders(['profiles'], registry.cwd));
  return { bump: profiles[0]?.bump ?? null, profiles: profiles.length, tables };
}

const nothing: Change = () => {};
const drying: Change = ({ edit }) =>
  edit(
    daisy,
    'meltFlow:\n',
    `dryingTemperature:\n  - ${claim('50 Cel')}\ndryingTime:\n  - ${claim('6 h')}\nmeltFlow:\n`,
  );
const claim = (value: string) => `{value: ${value}, basis: claimed, source: oakhollow-daisy-pla-sheet}`;
/** The house rules ask for a published top speed, where the sheet only claims one. */
const asking =
  (weaker: string): Change =>
  ({ edit }) =>
    edit(
      house,
      'flowMargin: 10 %\n',
      `flowMargin: 10 %\nminimumBasis:\n  topSpeed: {basis: published, ${weaker}}\n`,
    );
const cap = asking('weaker: cap, share: 80 %');

describe('the bump that an edit needs', () => {
  it.each<[string, Change, Change, string | null]>([
    ['a higher drying temperature', drying, ({ edit }) => edit(daisy, '50 Cel', '55 Cel'), 'minor'],
    [
      'a lower drying temperature',
      drying,
      ({ edit }) => edit(daisy, claim('50 Cel'), claim('45 Cel')),
      'major',
    ],
    ['a longer drying time', drying, ({ edit }) => edit(daisy, '6 h', '8 h'), 'major'],
    ['a shorter drying time', drying, ({ edit }) => edit(daisy, '6 h', '4 h'), 'minor'],
    ['drying that is stated now', nothing, drying, 'minor'],
    ['a nozzle window that narrows', nothing, ({ edit }) => edit(daisy, '200..235', '205..235'), 'major'],
    [
      'a nozzle window that leaves out a limit',
      nothing,
      ({ edit }) => edit(daisy, '200..235', '200..225'),
      'major',
    ],
    ['a higher acceleration', nothing, ({ edit }) => edit(wren, '8200 mm/s2', '9400 mm/s2'), 'minor'],
    ['a lower top speed', nothing, ({ edit }) => edit(wren, '430 mm/s', '410 mm/s'), 'major'],
    ['a filament that softens earlier', nothing, ({ edit }) => edit(daisy, '58 Cel', '55 Cel'), 'major'],
    ['another polymer', nothing, ({ edit }) => edit(daisy, 'polymer: PLA', 'polymer: PET-G'), 'major'],
    [
      'a smaller share for infill',
      nothing,
      ({ edit }) => edit(house, 'infill: 100 %\n  topSurface: 60 %', 'infill: 90 %\n  topSurface: 60 %'),
      'major',
    ],
    ['a smaller margin', nothing, ({ edit }) => edit(house, 'flowMargin: 10 %', 'flowMargin: 8 %'), 'minor'],
    [
      'a layer height more',
      nothing,
      ({ edit }) => edit(house, '[25 %, 50 %, 70 %]', '[25 %, 50 %, 60 %, 70 %]'),
      'minor',
    ],
    [
      'a layer height less',
      nothing,
      ({ edit }) => edit(house, '[25 %, 50 %, 70 %]', '[25 %, 50 %]'),
      'major',
    ],
    [
      'coarser steps of speed',
      nothing,
      ({ edit }) => edit(house, 'speed: 1 mm/s', 'speed: 50 mm/s'),
      'major',
    ],
    [
      'a limit that is gone',
      nothing,
      ({ edit }) =>
        edit(wren, 'contourSpeed:\n  - {value: 150 mm/s, basis: assumed, reason: Bench habit}\n', ''),
      'major',
    ],
    ['another notice', nothing, ({ edit }) => edit(wren, 'notice: Invented', 'notice: Made up'), 'patch'],
    ['a glass transition that is lower', nothing, ({ edit }) => edit(pla, '55..', '50..'), 'major'],
  ])('for %s', (_, before, change, bump) => {
    expect(bumpAfter(before, change)).toMatchObject({ bump, profiles: 1 });
  });
});

describe('a weaker basis at the same value', () => {
  const measured: Change = ({ edit }) =>
    edit(wren, '{value: 430 mm/s, basis: claimed,', '{value: 430 mm/s, basis: published,');
  const weakened: Change = ({ edit }) =>
    edit(wren, '{value: 430 mm/s, basis: published,', '{value: 430 mm/s, basis: claimed,');
  const under =
    (policy: Change): Change =>
    (registry) => {
      measured(registry);
      policy(registry);
    };

  it.each<[string, Change, string]>([
    ['nothing asks for more', nothing, 'patch'],
    ['tables only flag it', asking('weaker: flag'), 'patch'],
    ['tables take a share of it', cap, 'major'],
    ['tables refuse it', asking('weaker: refuse'), 'major'],
  ])('where %s', (_, policy, bump) => {
    expect(bumpAfter(under(policy), weakened).bump).toBe(bump);
  });
});

describe('house rules on weak numbers', () => {
  it('that grow laxer are a minor change, since cells get faster', () => {
    const { bump, tables } = bumpAfter(cap, ({ edit }) =>
      edit(house, 'weaker: cap, share: 80 %', 'weaker: flag'),
    );
    expect(tables.moves.length).toBeGreaterThan(0);
    expect(bump).not.toBe('patch');
  });

  it('that grow stricter are a major change', () => {
    expect(
      bumpAfter(asking('weaker: flag'), ({ edit }) => edit(house, 'weaker: flag', 'weaker: refuse')).bump,
    ).toBe('major');
  });

  it('that ask for a weaker basis are a minor change, though no quantity of theirs has moved', () => {
    const laxer: Change = ({ edit }) =>
      edit(house, 'topSpeed: {basis: published', 'topSpeed: {basis: claimed');
    expect(bumpAfter(cap, laxer).bump).toBe('minor');
  });
});
