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
