import type { HotEnd } from '../registry/nozzle.ts';
import type { AnyProfile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import type { Path } from '../registry/shape.ts';
import { stated } from '../registry/stated.ts';
import type { DegreesCelsius } from '../units/canonical.ts';
import { pairingOfTrial } from './pairing-of-trial.ts';
import { restsOnTrial } from './rests-on-trial.ts';

/**
 * Tubes of PTFE give off fluorinated fumes when they get hotter than 240 Cel to 260 Cel: common practice, no source,
 * from memory. The lower end warns, above the upper end nobody should run it.
 */
export const linerLimits: { readonly low: DegreesCelsius; readonly high: DegreesCelsius } = {
  low: 250,
  high: 260,
};

/** A temperature that the liner of a hot end meets. */
interface LinerTemperature {
  readonly path: Path;
  readonly value: DegreesCelsius;
  readonly hotEnd: HotEnd;
}

/** Every temperature that a polymer liner is to meet by a machine's limits and claims, or has met in a trial. */
export function linerTemperatures(profile: AnyProfile, registry: Registry): LinerTemperature[] {
  if (profile.kind === 'machine') {
    return profile.data.hotEnds.flatMap((hotEnd, index) =>
      hotEnd.liner === 'polymer' ? temperaturesOf(hotEnd, index, registry) : [],
    );
  }
  if (profile.kind !== 'trial') return [];
  const { hotEnd } = pairingOfTrial(profile.data, registry);
  if (hotEnd?.liner !== 'polymer') return [];
  const value = profile.data.conditions.nozzleTemperature;
  return value === undefined ? [] : [{ path: ['conditions', 'nozzleTemperature'], value, hotEnd }];
}

function temperaturesOf(hotEnd: HotEnd, index: number, registry: Registry): LinerTemperature[] {
  const limits = stated(hotEnd.temperatureLimit, ['hotEnds', index, 'temperatureLimit']);
  const flows = (hotEnd.meltFlow ?? []).flatMap((statement, position) => {
    const value = statement.at?.nozzleTemperature;
    if (value === undefined || restsOnTrial(statement, registry)) return [];
    return [{ path: ['hotEnds', index, 'meltFlow', position, 'at', 'nozzleTemperature'], value, hotEnd }];
  });
  return [...limits.map(({ path, value }) => ({ path, value, hotEnd })), ...flows];
}
