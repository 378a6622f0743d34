import type { Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import { chooseStatement } from '../registry/statement.ts';
import type { BenchRun } from './bench-run.ts';

/** What a trial and its filament say of a run, in canonical units. */
export function trialRun(registry: Registry, { data }: Profile<'trial'>): BenchRun {
  const { machine, filament: id, scale, gauge, soundMeter, conditions, events = [] } = data;
  const filament = registry.filament.get(id)?.data;
  const density = chooseStatement(filament?.density, {
    ...(machine !== undefined && { machine }),
    filament: id,
  });
  const halts = events.map(({ commandedFlow }) => commandedFlow);
  return present({
    filamentDiameter: filament?.diameter,
    diameterTolerance: filament?.diameterTolerance,
    density: density?.value,
    acceptedDeficit: data.acceptedDeficit,
    massResolution: scale?.resolution,
    feedLengthUncertainty: data.feedLengthUncertainty,
    haltedAt: halts.length === 0 ? undefined : Math.min(...halts),
    lengthResolution: gauge?.resolution,
    lengthAccuracy: gauge?.accuracy,
    acceptedStrength: data.acceptedStrength,
    acceptedRipple: data.acceptedRipple,
    acceptedGrade: data.acceptedGrade,
    acceleration: conditions.acceleration,
    residualMoisture: data.residualMoisture,
    reelMass: data.reelMass,
    meterClass: soundMeter?.class,
    levelResolution: soundMeter?.resolution,
    backgroundLevel: data.backgroundLevel,
  });
}

/** The facts that are known, without keys for the others. */
function present(facts: { readonly [Fact in keyof BenchRun]: BenchRun[Fact] | undefined }): BenchRun {
  const known = Object.entries(facts).filter(([, value]) => value !== undefined);
  return Object.fromEntries(known) as BenchRun; // entries lose which key has which type
}
