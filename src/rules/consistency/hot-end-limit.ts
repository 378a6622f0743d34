import { blamedAtHotEnd } from '../../knowledge/flow-limits.ts';
import { isNozzleTemperature } from '../../knowledge/nozzle-temperature-figure.ts';
import { restsOnTrial } from '../../knowledge/rests-on-trial.ts';
import type { Blame } from '../../registry/hit.ts';
import type { HotEnd } from '../../registry/nozzle.ts';
import { findNozzle } from '../../registry/nozzle.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import type { Path } from '../../registry/shape.ts';
import { highestStated } from '../../registry/stated.ts';
import { type Conditions, statementsOf } from '../../registry/statement.ts';
import type { DegreesCelsius } from '../../units/canonical.ts';
import { shown } from '../../units/wording.ts';
import { alike, hotEnd } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'neighbours',
  severity: 'error',
  statement: 'No trial or statement has a hot end above its temperature limit.',
  rationale:
    'Above the limit the heater block, the sensor or the liner fails; a limit found there is of no use.',
  source: "Machine profile, temperatureLimit of the hot end: a maker's limit is not to be exceeded.",
  example: alike('machine', { bad: '240 Cel', good: '290 Cel' }, (temperatureLimit) =>
    hotEnd({ temperatureLimit }),
  ),
  *check(profile, { registry }) {
    for (const { path, value, hotEnd, machine } of hotEndTemperatures(profile, registry)) {
      const limit = highestStated(hotEnd.temperatureLimit);
      if (limit === null || value <= limit || !isNozzleTemperature(value)) continue;
      yield {
        path,
        part: 'value',
        blames: blamedHotEnd(machine, hotEnd, registry),
        message: `${shown(value, 'temperature')} is above what the hot end "${hotEnd.id}" of ${machine} may be set to, ${shown(limit, 'temperature')}`,
        found: shown(value, 'temperature'),
        allowed: `up to ${shown(limit, 'temperature')}`,
        source: `machines/${machine}.yaml, temperatureLimit`,
        help: 'Check the digits of both; never run a hot end above the limit of its maker.',
      };
    }
  },
};

interface HotEndTemperature {
  readonly path: Path;
  readonly value: DegreesCelsius;
  readonly hotEnd: HotEnd;
  readonly machine: string;
}

function hotEndTemperatures(profile: AnyProfile, registry: Registry): HotEndTemperature[] {
  if (profile.kind === 'trial') {
    const { machine, nozzle, conditions } = profile.data;
    const { nozzleTemperature } = conditions;
    return placed(['conditions', 'nozzleTemperature'], { machine, nozzle, nozzleTemperature }, registry);
  }
  const own: Conditions = profile.kind === 'machine' ? { machine: profile.id } : {};
  return [...statementsOf(profile)].flatMap(({ path, statement }) =>
    restsOnTrial(statement, registry)
      ? []
      : placed([...path, 'at', 'nozzleTemperature'], { ...own, ...statement.at }, registry),
  );
}

/** Where a nozzle is at a temperature, as far as that is known. */
interface NozzleAt {
  readonly machine?: string | undefined;
  readonly nozzle?: string | undefined;
  readonly nozzleTemperature?: DegreesCelsius | undefined;
}

function placed(path: Path, at: NozzleAt, registry: Registry): HotEndTemperature[] {
  const { machine: id, nozzle, nozzleTemperature: value } = at;
  const machine = id === undefined ? undefined : registry.machine.get(id)?.data;
  if (machine === undefined || id === undefined || nozzle === undefined || value === undefined) return [];
  const fitted = findNozzle(machine, nozzle);
  return fitted === null ? [] : [{ path, value, hotEnd: fitted.hotEnd, machine: id }];
}

function blamedHotEnd(id: string, hotEnd: HotEnd, registry: Registry): Blame[] {
  const machine = registry.machine.get(id)?.data;
  return machine === undefined ? [] : blamedAtHotEnd({ machine, hotEnd }, 'temperatureLimit');
}
