import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type ClaimEvidence,
  conformanceBy,
  holds,
  isCompatible,
  shortfallOf,
} from '../../../src/decisions/claims/claim-verdict.ts';
import { type ClaimReport, judgeClaims } from '../../../src/decisions/claims/judge-claims.ts';
import { loadFolders } from '../../../src/host/load-registry.ts';
import type { Machine } from '../../../src/registry/generated/documents.ts';
import { testDay } from '../../run-command.ts';

const { registry } = loadFolders(['profiles']);

function report(
  id: string,
  change: (machine: Machine) => Partial<Machine> = () => ({}),
  policy?: string,
): ClaimReport {
  const machine = registry.machine.get(id)!;
  const changed = { ...machine, data: { ...machine.data, ...change(machine.data) } };
  const judged = judgeClaims({ ...registry, machine: new Map([...registry.machine, [id, changed]]) }, id, {
    today: testDay,
    ...(policy !== undefined && { policy }),
  });
  if (!judged.ok) throw new Error(judged.error.message);
  return judged.value;
}

const judged = (from: ClaimReport, property: string) =>
  from.claims.find(({ claim }) => claim.property === property)!;

const claimedFlow =
  (value: number, nozzleTemperature = 230) =>
  ({ hotEnds }: Machine): Partial<Machine> => ({
    hotEnds: hotEnds.map((hotEnd) => ({
      ...hotEnd,
      meltFlow: [{ value, basis: 'claimed', at: { nozzle: 'hs-0.6', polymer: 'PLA', nozzleTemperature } }],
    })),
  });

describe('a claimed flow', () => {
  it('is not reached where the ladder at its temperature stays below, by how much with its interval', () => {
    const { status, shortfall, evidence, text } = judged(report('brackwater/lantern'), 'meltFlow');
    expect(status).toBe('notReached');
    expect(evidence[0]).toMatchObject({
      trial: 'lantern-stagecraft-pla-230',
      nozzle: 'hs-0.6',
      filament: 'ashgrove/stagecraft-pla',
      nozzleTemperature: 230,
      date: '2026-03-12',
    });
    expect(shortfall?.value).toBeCloseTo(56 - (evidence[0]?.value ?? 0), 9);
    expect(shortfall?.range?.low).toBeCloseTo(56 - (evidence[0]?.interval?.high ?? 0), 9);
    expect(text).toMatch(
      /^46\.2 mm3\/s measured \(simulated\), .*: .* \(18 %, 95 % interval .*\) below the claim$/,
    );
  });

  it.each([46.5, 45.5])('of %d mm3/s is not contradicted where the interval reaches it', (value) => {
    const { status, text } = judged(report('brackwater/lantern', claimedFlow(value)), 'meltFlow');
    expect(status).toBe('notContradicted');
    expect(text).toMatch(
      /the claim lies within the interval, so nothing speaks against it, and nothing shows/,
    );
  });

  it('is held where the whole interval lies on its better side', () => {
    const { status, text } = judged(report('brackwater/lantern', claimedFlow(45)), 'meltFlow');
    expect(status).toBe('held');
    expect(text).toMatch(/^46\.2 mm3\/s measured \(simulated\), 95 % interval 45\.3\.\.46\.8 mm3\/s$/);
  });

  it('is held by a lower temperature too', () => {
    expect(judged(report('brackwater/lantern', claimedFlow(39, 260)), 'meltFlow').status).toBe('held');
  });

  it('is untested where ladders were run colder only, and where they ended before the limit', () => {
    const colder = judged(report('brackwater/lantern', claimedFlow(60, 260)), 'meltFlow');
    expect(colder.status).toBe('untested');
    expect(colder.text).toBe('tested only at lower temperatures, where the hot end melts less');
    const ended = judged(
      report('ferrywright/barge', ({ hotEnds }) => ({
        hotEnds: hotEnds.map((hotEnd) => ({
          ...hotEnd,
          meltFlow: [{ value: 100, basis: 'claimed', at: { nozzle: 'hs-1.2', polymer: 'PLA' } }],
        })),
      })),
      'meltFlow',
    );
    expect(ended.status).toBe('untested');
    expect(ended.text).toMatch(/^at least 64 mm3\/s measured \(simulated\), and the run ended there$/);
  });

  it('cannot be reached where the heater has not the power', () => {
    const { status, text } = judged(
      report('brackwater/lantern', (machine) => {
        const [hotEnd] = claimedFlow(200, 280)(machine).hotEnds ?? [];
        return { hotEnds: hotEnd === undefined ? [] : [hotEnd] };
      }),
      'meltFlow',
    );
    expect(status).toBe('notReachable');
    expect(text).toMatch(/melting that much takes at least .*, and the heater has 65 W/);
  });
});

describe('a claimed top speed', () => {
  it('cannot be reached where the run-up is longer than half of the bed', () => {
    const slow = report('brackwater/lantern', () => ({ acceleration: [{ value: 500, basis: 'claimed' }] }));
    const { status, text } = judged(slow, 'topSpeed');
    expect(status).toBe('notReachable');
    expect(text).toMatch(
      /^it takes 220\.9 mm to run up at 500 mm\/s2, .* 212\.2 mm: that gives 460\.7 mm\/s at most$/,
    );
  });

  it('cannot be reached while printing where no claimed flow feeds it', () => {
    const fast = report('brackwater/lantern', () => ({ topSpeed: [{ value: 2000, basis: 'claimed' }] }));
    const { status, text } = judged(fast, 'topSpeed');
    expect(status).toBe('notReachable');
    expect(text).toMatch(/^not while printing: .* the highest flow claimed is 56 mm3\/s,/);
  });

  it('is untested where nothing has timed it', () => {
    expect(judged(report('brackwater/lantern'), 'topSpeed').status).toBe('untested');
  });

  it('says what flow printing at it takes, against the highest that ladders have shown', () => {
    const speedOf = (value: number) =>
      judged(
        report('brackwater/lantern', () => ({
          topSpeed: [
            { value, basis: 'claimed' },
            { value, basis: 'measured', interval: { low: value, high: value }, date: '2026-04-01' },
          ],
        })),
        'topSpeed',
      );
    // Smallest usual bead of 0.4 mm: h 0.1, w 0.44: 0.1 * 0.34 + pi * 0.1^2 / 4 = 0.041854 mm2.
    expect(speedOf(470)).toMatchObject({
      status: 'held',
      text: expect.stringMatching(
        /; printing the smallest usual bead at that speed takes 19\.67 mm3\/s, and the highest flow measured \(simulated\) is 48\.9 mm3\/s$/,
      ),
    });
    expect(speedOf(1200).text).toMatch(/takes 50\.22 mm3\/s, .* is 48\.9 mm3\/s, which feeds 1168 mm\/s$/);
  });

  it('holds or not by a measured statement beside it', () => {
    const beside = (value: number) =>
      report('brackwater/lantern', () => ({
        topSpeed: [
          { value: 470, basis: 'claimed' },
          { value, basis: 'measured', interval: { low: value - 5, high: value + 5 }, date: '2026-04-01' },
        ],
      }));
    expect(judged(beside(480), 'topSpeed').status).toBe('held');
    expect(judged(beside(473), 'topSpeed').status).toBe('notContradicted');
    expect(judged(beside(467), 'topSpeed').status).toBe('notContradicted');
    expect(judged(beside(390), 'topSpeed').status).toBe('notReached');
  });
});

describe('other claims', () => {
  it('a temperature limit is not contradicted once trials were set to it, and untested before', () => {
    const hot = report('brackwater/lantern', ({ hotEnds }) => ({
      hotEnds: hotEnds.map((hotEnd) => ({
        ...hotEnd,
        temperatureLimit: [{ value: 245, basis: 'claimed' }],
      })),
    }));
    expect(judged(hot, 'nozzleTemperature')).toMatchObject({
      status: 'notContradicted',
      text: expect.stringMatching(/^255 Cel set \(simulated\): set, not measured, /),
    });
    expect(judged(report('brackwater/lantern'), 'nozzleTemperature').status).toBe('untested');
  });

  it('a sound level is an upper bound', () => {
    const loud = report('brackwater/lantern', () => ({
      soundLevel: [
        { value: 53, basis: 'claimed' },
        { value: 57, basis: 'measured', interval: { low: 56, high: 58 } },
      ],
    }));
    const { status, text } = judged(loud, 'soundLevel');
    expect(status).toBe('notReached');
    expect(text).toMatch(/ 4 dB\[SPL\]\{A\} \(95 % interval 3\.\.5 dB\[SPL\]\{A\}\) above the claim$/);
  });

  it('leaves the price out', () => {
    expect(report('brackwater/lantern').claims.map(({ claim }) => claim.label)).not.toContain('price');
  });
});

describe('the decision rule', () => {
  const speeds = (value: number, half: number) => () => ({
    topSpeed: [
      { value: 470, basis: 'claimed' as const },
      { value, basis: 'measured' as const, interval: { low: value - half, high: value + half } },
    ],
  });
  const top = (value: number, half: number, policy?: string) =>
    judged(report('brackwater/lantern', speeds(value, half), policy), 'topSpeed');

  it('is that of the policy, else guarded acceptance', () => {
    const rules = [undefined, 'workshop', 'prototype'].map(
      (policy) => report('brackwater/lantern', undefined, policy).decision,
    );
    expect(rules).toEqual([
      { rule: 'guardedAcceptance', policy: null, isStated: false },
      { rule: 'guardedAcceptance', policy: 'workshop', isStated: true },
      { rule: 'simpleAcceptance', policy: 'prototype', isStated: true },
    ]);
  });

  it('by simple acceptance lets the value alone decide where the interval reaches the claim', () => {
    expect(top(473, 5, 'prototype')).toMatchObject({ status: 'accepted', shortfall: null });
    expect(top(467, 5, 'prototype')).toMatchObject({ status: 'rejected', shortfall: { value: 3 } });
    expect(top(473, 5, 'workshop').status).toBe('notContradicted');
  });

  it('by simple acceptance still asks for a guard band where a claim is held or not reached', () => {
    expect(top(480, 5, 'prototype').status).toBe('held');
    expect(top(460, 5, 'prototype').status).toBe('notReached');
  });

  it('by simple acceptance needs a known uncertainty', () => {
    const bare = report(
      'brackwater/lantern',
      () => ({
        topSpeed: [
          { value: 470, basis: 'claimed' },
          { value: 480, basis: 'measured' },
        ],
      }),
      'prototype',
    );
    expect(judged(bare, 'topSpeed')).toMatchObject({ status: 'notContradicted', conformance: null });
  });

  it('comes with the probability that the claim holds', () => {
    expect(top(470, 5).conformance?.low).toBeCloseTo(0.5, 6);
    expect(top(475, 5).conformance?.low).toBeCloseTo(0.975, 6);
    expect(top(465, 5).conformance?.high).toBeCloseTo(0.025, 6);
    expect(top(480, 5).conformance).toEqual({ low: 0.999, high: 1 });
    expect(top(390, 5).conformance).toEqual({ low: 0, high: 0.001 });
  });

  it('takes a bound as the 95 % that it is, and says nothing of what lies beyond it', () => {
    const barge = (value: number) =>
      judged(
        report('ferrywright/barge', ({ hotEnds }) => ({
          hotEnds: hotEnds.map((hotEnd) => ({
            ...hotEnd,
            meltFlow: [{ value, basis: 'claimed', at: { nozzle: 'hs-1.2', polymer: 'PLA' } }],
          })),
        })),
        'meltFlow',
      );
    expect(barge(60)).toMatchObject({ status: 'held', conformance: { low: 0.95, high: 1 } });
    expect(barge(100)).toMatchObject({ status: 'untested', conformance: null });
  });

  it('gives none to what was only set, and to what nothing has tested', () => {
    const { claims } = report('brackwater/lantern');
    const untested = claims.filter(({ status }) => status === 'untested');
    expect(untested.map(({ conformance }) => conformance)).toEqual(untested.map(() => null));
  });
});

describe('laws of judging', () => {
  const evidence = fc
    .tuple(fc.double({ min: 1, max: 100, noNaN: true }), fc.double({ min: 0, max: 20, noNaN: true }))
    .map(
      ([value, half]): ClaimEvidence => ({
        value,
        interval: { low: value - half, high: value + half },
        censored: null,
        how: 'measured',
        simulated: false,
        trial: null,
        date: null,
        nozzle: null,
        filament: null,
        nozzleTemperature: null,
        faults: [],
      }),
    );
  const claimed = fc.double({ min: 1, max: 120, noNaN: true });

  it('a claim that is held is not contradicted, and its whole interval lies on the better side', () => {
    fc.assert(
      fc.property(claimed, evidence, fc.boolean(), (claim, found, lessIsBetter) => {
        if (!holds(claim, found, lessIsBetter)) return;
        expect(isCompatible(claim, found, lessIsBetter)).toBe(true);
        expect(shortfallOf(claim, found, lessIsBetter).range?.high).toBeLessThanOrEqual(0);
      }),
    );
  });

  it('a claim that is held does so with 97.5 % at least, one that is missed with 2.5 % at most, by either side', () => {
    fc.assert(
      fc.property(claimed, evidence, fc.boolean(), (claim, found, lessIsBetter) => {
        const probability = conformanceBy(claim, found, lessIsBetter);
        if (holds(claim, found, lessIsBetter)) expect(probability?.low).toBeGreaterThanOrEqual(0.975 - 1e-6);
        if (!isCompatible(claim, found, lessIsBetter))
          expect(probability?.high).toBeLessThanOrEqual(0.025 + 1e-6);
      }),
    );
  });

  it('a value that is known exactly meets a claim of as much', () => {
    fc.assert(
      fc.property(evidence, fc.boolean(), (found, lessIsBetter) => {
        const exact = { ...found, interval: { low: found.value, high: found.value } };
        expect(conformanceBy(found.value, exact, lessIsBetter)).toEqual({ low: 0.999, high: 1 });
      }),
    );
  });

  it('nothing that was only set, and nothing without an interval, holds a claim', () => {
    fc.assert(
      fc.property(claimed, evidence, fc.boolean(), (claim, found, lessIsBetter) => {
        expect(holds(claim, { ...found, how: 'set' }, lessIsBetter)).toBe(false);
        expect(holds(claim, { ...found, interval: null }, lessIsBetter)).toBe(false);
      }),
    );
  });

  it('a claim is compatible, or missed by more than nothing over the whole interval', () => {
    fc.assert(
      fc.property(claimed, evidence, fc.boolean(), (claim, found, lessIsBetter) => {
        if (isCompatible(claim, found, lessIsBetter)) return;
        expect(shortfallOf(claim, found, lessIsBetter).range?.low).toBeGreaterThan(0);
      }),
    );
  });

  it('a smaller claim of a flow is held by whatever holds a larger one', () => {
    fc.assert(
      fc.property(claimed, evidence, fc.double({ min: 0, max: 1, noNaN: true }), (claim, found, share) => {
        if (holds(claim, found, false)) expect(holds(claim * share, found, false)).toBe(true);
        if (isCompatible(claim, found, false)) expect(isCompatible(claim * share, found, false)).toBe(true);
      }),
    );
  });
});

describe('a claimed speed or acceleration that moves have timed', () => {
  const top = (value: number) =>
    report('emberlow/hearth', () => ({ topSpeed: [{ value, basis: 'claimed' }] }));

  it('is not reached where a machine that was told as much stays below', () => {
    const { status, evidence, text } = judged(report('emberlow/hearth'), 'acceleration');
    expect(status).toBe('notReached');
    expect(evidence[0]).toMatchObject({ trial: 'hearth-motion', how: 'measured' });
    expect(text).toMatch(/^61\d0 mm\/s2 measured \(simulated\), 95 % interval .* below the claim$/);
  });

  it('is held where it stays below what was reached, and not contradicted within the interval', () => {
    expect(judged(top(310), 'topSpeed').status).toBe('held');
    expect(judged(top(328), 'topSpeed').status).toBe('notContradicted');
  });

  it('is untested where less than the claim was commanded, and reached', () => {
    const { status, text } = judged(top(400), 'topSpeed');
    expect(status).toBe('untested');
    expect(text).toContain('at least 327 mm/s measured (simulated), and the run ended there');
  });

  it('is not reached where the controller keeps to less than it was told, whatever is claimed', () => {
    const faster = report('emberlow/hearth', () => ({ acceleration: [{ value: 9000, basis: 'claimed' }] }));
    expect(judged(faster, 'acceleration').status).toBe('notReached');
  });
});

describe('a claimed temperature that a thermometer has checked', () => {
  const hotterBy = (offset: number) => (machine: Machine) => ({
    chamber: { ...machine.chamber, temperatureLimit: [{ value: 95 + offset, basis: 'claimed' as const }] },
  });
  const chamber = (from: ClaimReport) =>
    from.claims.find(({ claim }) => claim.limits === 'chamberTemperature')!;

  it('is not reached where the part was set to it and stays colder', () => {
    const { status, shortfall, text, evidence } = chamber(report('emberlow/hearth'));
    expect(status).toBe('notReached');
    expect(evidence[0]?.trial).toBe('hearth-chamber-check');
    expect(shortfall?.value).toBeCloseTo(6, 0);
    expect(text).toMatch(/: 6\.\d+ K \(95 % interval [\d.]+\.\.[\d.]+ K\) below the claim$/);
  });

  it('is held where the part was set to more and passed it', () => {
    expect(chamber(report('emberlow/hearth', hotterBy(-10))).status).toBe('held');
  });

  it('is untested where the part was not set so high', () => {
    expect(chamber(report('emberlow/hearth', hotterBy(20))).status).toBe('untested');
  });

  it('may be the setting of a dryer, which the sheet states as a fact', () => {
    const { status, claim } = judged(report('brackwater/lantern'), 'dryerTemperature');
    expect(claim.statement).toEqual({ value: 51, basis: 'claimed', source: 'brackwater-lantern-sheet' });
    expect(status).toBe('notReached');
    expect(judged(report('emberlow/hearth'), 'dryerTemperature').status).toBe('untested');
  });
});
