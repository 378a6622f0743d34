import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ReduceById } from '../../../src/bench/reducing-once.ts';
import { matchPairing } from '../../../src/decisions/match/match-pairing.ts';
import type { PairingMatch } from '../../../src/decisions/match/match-verdict.ts';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { type Aspect, verdicts } from '../../../src/knowledge/suitability/suitability.ts';
import type { Filament, Machine } from '../../../src/registry/generated/documents.ts';
import { failure } from '../../../src/result.ts';
import { testDay } from '../../run-command.ts';

const { registry } = loadFolders(['profiles']);
const machines = [...registry.machine.values()];
const filaments = [...registry.filament.values()];
const notReduced: ReduceById = () => failure([]);

type Change<Document> = (document: Document) => Partial<Document>;

function match(
  machineId: string,
  filamentId: string,
  changeMachine: Change<Machine> = () => ({}),
  changeFilament: Change<Filament> = () => ({}),
): PairingMatch {
  const machine = registry.machine.get(machineId)!;
  const filament = registry.filament.get(filamentId)!;
  return matchPairing(
    { ...machine, data: { ...machine.data, ...changeMachine(machine.data) } },
    { ...filament, data: { ...filament.data, ...changeFilament(filament.data) } },
    { registry, today: testDay, rule: 'guardedAcceptance', reduce: notReduced },
  )!;
}

const about = ({ reasons }: PairingMatch, aspect: Aspect) =>
  reasons.filter((reason) => reason.aspect === aspect).map(({ verdict, text }) => [verdict, text]);

const withLimit =
  (value: number): Change<Machine> =>
  ({ hotEnds }) => ({
    hotEnds: hotEnds.map((hotEnd) => ({ ...hotEnd, temperatureLimit: [{ value, basis: 'assumed' }] })),
  });

describe('each reason says its numbers:', () => {
  it('a window that the hot end reaches in part', () => {
    expect(
      about(match('brackwater/lantern', 'ashgrove/stagecraft-petg', withLimit(240)), 'nozzleTemperature'),
    ).toEqual([['limited', 'hot end "main" goes to 240 Cel, which leaves 232..240 Cel of 232..253 Cel']]);
  });

  it('a window that the hot end does not reach', () => {
    expect(match('brackwater/lantern', 'ashgrove/stagecraft-petg', withLimit(220)).verdict).toBe(
      'unsuitable',
    );
  });

  it('a polymer liner', () => {
    const hot = about(match('ferrywright/skiff', 'quillmere/visor-pc', withLimit(300)), 'nozzleTemperature');
    expect(hot).toContainEqual([
      'unsuitable',
      'the polymer liner withstands 250 Cel, the filament needs 270..300 Cel',
    ]);
  });

  it('a filament of another diameter', () => {
    expect(about(match('ferrywright/barge', 'ashgrove/stagecraft-pla'), 'filamentDiameter')).toEqual([
      ['unsuitable', 'hot end "main" takes filament of 2.85 mm, this one has 1.75 mm'],
    ]);
  });

  it('a filler that grinds every nozzle, and one that grinds some', () => {
    expect(about(match('ferrywright/skiff', 'quillmere/truss-pa6-cf15'), 'nozzleMaterial')).toContainEqual([
      'unsuitable',
      'nozzle br-0.4 of brass is worn by carbon (CF)',
    ]);
    const lantern = match('brackwater/lantern', 'quillmere/truss-pa6-cf15');
    expect(lantern.nozzle).toBe('hs-0.6');
    expect(about(lantern, 'nozzleMaterial')[0]).toEqual([
      'limited',
      'only with hs-0.6 or one as hard: nozzle br-0.4 of brass is worn by carbon (CF)',
    ]);
  });

  it('a dryer that would fuse the spool', () => {
    const fixed = match('brackwater/lantern', 'ashgrove/stagecraft-pla', () => ({
      dryer: { setting: 'fixed', temperature: 65 },
    }));
    expect(about(fixed, 'dryer')[0]?.[0]).toBe('limited');
    expect(about(fixed, 'dryer')[0]?.[1]).toMatch(
      /^the dryer is fixed at 65 Cel, 2.6 K colder than it says, and would fuse the spool, which softens at 58 Cel/,
    );
  });

  it('a spool that is too heavy', () => {
    const heavy = match('brackwater/lantern', 'ashgrove/stagecraft-pla', undefined, () => ({
      spoolMass: 2300,
    }));
    expect(about(heavy, 'spool')[0]?.[0]).toBe('limited');
  });

  it('a chamber that is open, and one that nothing senses', () => {
    expect(about(match('ferrywright/skiff', 'quillmere/rigging-abs'), 'chamber')).toEqual([
      ['limited', 'the filament needs a chamber of 45..70 Cel, and the machine is open'],
    ]);
    const blind = match('emberlow/hearth', 'quillmere/rigging-abs', ({ chamber }) => ({
      chamber: { ...chamber, sensed: false },
    }));
    expect(about(blind, 'chamber')).toContainEqual([
      'limited',
      'the chamber has no temperature sensor and should be at 45..70 Cel: measure it by hand',
    ]);
  });

  it('a bed that is too cold', () => {
    const cold = match('ferrywright/skiff', 'quillmere/visor-pc');
    expect(about(cold, 'bed')).toEqual([
      ['limited', 'the bed goes to 95 Cel, the filament needs 105..120 Cel'],
    ]);
  });

  it('a fan that only runs at full speed', () => {
    const loud = match('emberlow/hearth', 'quillmere/rigging-abs', () => ({
      partCooling: { adjustable: false },
    }));
    expect(about(loud, 'cooling')).toEqual([
      ['limited', 'the filament needs the fan at 0..30 %; it runs at full speed only'],
    ]);
  });

  it('a measured flow against the claim', () => {
    expect(about(match('emberlow/hearth', 'quillmere/rigging-abs'), 'flow').at(-1)?.[1]).toMatch(
      /^29\.1 mm3\/s measured \(simulated\) at 255 Cel with hs-0\.6 .*; 79 % of the 37 mm3\/s claimed for this nozzle, which holds with a probability of at most 0\.1 %$/,
    );
  });

  it('a material that must not be extruded', () => {
    const poison = match('emberlow/hearth', 'quillmere/rigging-abs', undefined, () => ({
      polymer: 'PVC',
      designation: 'PVC',
    }));
    expect(poison.verdict).toBe('unsuitable');
    expect(about(poison, 'material')[0]?.[1]).toBe('PVC must not be used as a feedstock on any machine');
  });
});

const pairs = fc.record({ machine: fc.constantFrom(...machines), filament: fc.constantFrom(...filaments) });
const rank = ({ verdict }: PairingMatch) => verdicts.indexOf(verdict);

describe('laws of matching', () => {
  it('a higher limit of the hot end never makes a match worse', () => {
    const limits = fc.tuple(fc.integer({ min: 150, max: 450 }), fc.integer({ min: 0, max: 200 }));
    fc.assert(
      fc.property(pairs, limits, ({ machine, filament }, [limit, more]) => {
        const before = match(machine.id, filament.id, withLimit(limit));
        const after = match(machine.id, filament.id, withLimit(limit + more));
        expect(rank(after)).toBeLessThanOrEqual(rank(before));
      }),
    );
  });

  it('a hotter bed never makes a match worse', () => {
    const limits = fc.tuple(fc.integer({ min: 20, max: 150 }), fc.integer({ min: 0, max: 100 }));
    const withBed =
      (value: number): Change<Machine> =>
      () => ({ bed: { temperatureLimit: [{ value, basis: 'assumed' }] } });
    fc.assert(
      fc.property(pairs, limits, ({ machine, filament }, [limit, more]) => {
        const before = match(machine.id, filament.id, withBed(limit));
        const after = match(machine.id, filament.id, withBed(limit + more));
        expect(rank(after)).toBeLessThanOrEqual(rank(before));
      }),
    );
  });

  it('a verdict is that of the worst reason', () => {
    fc.assert(
      fc.property(pairs, ({ machine, filament }) => {
        const { verdict, reasons } = match(machine.id, filament.id);
        expect(verdicts.indexOf(verdict)).toBe(
          Math.max(...reasons.map((reason) => verdicts.indexOf(reason.verdict))),
        );
      }),
    );
  });
});
