import { describe, expect, it } from 'vitest';
import { reduceTrial } from '../../src/bench/reduce-trial.ts';
import type { ReduceById } from '../../src/bench/reducing-once.ts';
import { loadFolders } from '../../src/host/load-registry.ts';
import { familiesOf } from '../../src/knowledge/families.ts';
import { findFittedPairing } from '../../src/knowledge/pairing.ts';
import { meltCapacity } from '../../src/prediction/melt-capacity.ts';
import { predictLimit } from '../../src/prediction/predict-limit.ts';
import type { Trial } from '../../src/registry/generated/documents.ts';

const { registry } = loadFolders(['profiles']);
const ladders = [...registry.trial.values()].filter(({ data }) => data.method === 'flowLadder');
const reductions = new Map(ladders.map(({ id }) => [id, reduceTrial(registry, id)]));
const reduce: ReduceById = (id) => reductions.get(id) ?? reduceTrial(registry, id);

/** The prediction for a trial of the demo without the trials that are left out, against what its readings give. */
function holds(trial: Trial, isLeftOut: (other: Trial) => boolean): boolean {
  const { machine, nozzle: nozzleId, filament: filamentId, conditions } = trial;
  const { nozzleTemperature } = conditions;
  if (machine === undefined || nozzleId === undefined || nozzleTemperature === undefined) {
    throw new Error(`${trial.id} is no ladder`);
  }
  const pairing = findFittedPairing(registry, { machine, nozzle: nozzleId, filament: filamentId });
  const reduced = reduce(trial.id);
  const limit = reduced.ok ? reduced.value.results[0] : undefined;
  if (!pairing.ok || limit === undefined) throw new Error(`${trial.id} cannot be used`);
  const { hotEnd, nozzle, filament } = pairing.value;
  const rest = new Map([...registry.trial].filter(([, other]) => !isLeftOut(other.data)));
  const setup = {
    hotEnd,
    nozzle,
    filament: filament.data,
    families: familiesOf(filament.data, registry),
    nozzleTemperature,
  };
  const predicted = predictLimit({ ...registry, trial: rest }, pairing.value, setup, reduce);
  if (!predicted.ok) return false;
  const { low, high } = predicted.value.range;
  return limit.value <= high && (limit.censored === 'above' || limit.value >= low);
}

function shareHeld(isLeftOut: (trial: Trial, other: Trial) => boolean): number {
  const held = ladders.filter(({ data }) => holds(data, (other) => isLeftOut(data, other)));
  return held.length / ladders.length;
}

describe('the stated range holds what the demo ladders give, for at least 90 % of them,', () => {
  it('without the trial itself', () => {
    expect(shareHeld((trial, other) => trial.id === other.id)).toBeGreaterThanOrEqual(0.9);
  });

  it('without any trial of the machine', () => {
    expect(shareHeld((trial, other) => trial.machine === other.machine)).toBeGreaterThanOrEqual(0.9);
  });

  it('without any trial at all', () => {
    expect(shareHeld(() => true)).toBeGreaterThanOrEqual(0.9);
  });
});

describe('the force of a drive', () => {
  const machine = registry.machine.get('brackwater/lantern')!;

  function predictionWith(value: number | null) {
    const hotEnds = machine.data.hotEnds.map(({ driveForce: _, ...hotEnd }) => ({
      ...hotEnd,
      ...(value !== null && { driveForce: [{ value, basis: 'claimed' as const }] }),
    }));
    const driven = { ...machine, data: { ...machine.data, hotEnds } };
    const request = { machine: machine.id, nozzle: 'hs-0.4', filament: 'ashgrove/stagecraft-pla' };
    const changed = { ...registry, machine: new Map([...registry.machine, [machine.id, driven]]) };
    const pairing = findFittedPairing(changed, request);
    if (!pairing.ok) throw new Error(pairing.error.message);
    const { hotEnd, nozzle, filament } = pairing.value;
    const families = familiesOf(filament.data, changed);
    const setup = { hotEnd, nozzle, filament: filament.data, families, nozzleTemperature: 230 };
    const predicted = predictLimit(changed, pairing.value, setup, reduce);
    if (!predicted.ok) throw new Error(predicted.error.message);
    return predicted.value;
  }

  it('caps what is expected where it is stated and weak', () => {
    const [free, strong, weak] = [predictionWith(null), predictionWith(90), predictionWith(0.5)];
    expect(free.caps.map(({ by }) => by)).not.toContain('traction');
    expect(strong).toMatchObject({ value: free.value, cappedBy: null });
    expect(weak.cappedBy?.by).toBe('traction');
    expect(weak.value).toBe(weak.cappedBy?.flow);
    expect(weak.cappedBy?.text).toMatch(
      /^the drive pushes 0\.5 N, which is 0\.2079 MPa in the strand, and the melt leaves at .* \(assumed: PLA of 60 Pa\.s at 230 Cel, /,
    );
  });

  it('counts as far as the strand bears it', () => {
    const text = predictionWith(600).caps.find(({ by }) => by === 'traction')?.text;
    expect(text).toMatch(/^of the 600 N of the drive the strand bears 95 MPa, /);
  });
});

describe('conduction', () => {
  const families = [...registry.polymer.values()].map(({ data }) => data);

  it('lets a longer melt zone and a hotter nozzle deliver more', () => {
    const deliver = (temperature: number, length: number) =>
      families.flatMap((family) => meltCapacity([family], temperature, length)?.flow ?? 0);
    const [base, longer, hotter] = [deliver(260, 20), deliver(260, 40), deliver(280, 20)];
    base.forEach((flow, index) => {
      expect(longer[index]).toBeCloseTo(2 * flow, 6);
      expect(hotter[index]).toBeGreaterThanOrEqual(flow);
    });
  });

  it('tells nothing of a nozzle that is colder than where the polymer flows', () => {
    expect(
      meltCapacity(
        [...families].filter(({ id }) => id === 'PLA'),
        110,
        20,
      ),
    ).toBeNull();
  });
});
