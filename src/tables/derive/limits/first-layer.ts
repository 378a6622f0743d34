import { conditionsOf, type Pairing } from '../../../knowledge/pairing.ts';
import { chooseStatement } from '../../../registry/statement.ts';
import type { DegreesCelsius } from '../../../units/canonical.ts';
import { roundDown } from '../../../units/round-to-step.ts';
import { type SourcedValue, sourcedStatement } from '../sourced-value.ts';
import { type MeltAt, meltAt } from './melt-at.ts';
import type { MeltLimit } from './melt-limit.ts';
import { hotEndLimit, hottestSetting, nozzleWindow } from './nozzle-settings.ts';

/** The nozzle temperature of the first layer, and what melts there. */
export interface FirstLayer {
  readonly melt: MeltAt;
  /** Whether the filament states one; else the first layer is printed as the rest. */
  readonly isStated: boolean;
  readonly sourcedValues: readonly SourcedValue[];
  /** What became of the temperature that is stated; empty where it stands as it is. */
  readonly note: string;
}

/**
 * The first layer of a table: at the temperature that the filament states, inside of its window, never above what the
 * hot end may be set to, and inside of what was tested, so that its flow rests on a limit; else as the rest of the print.
 */
export function firstLayerMelt(pairing: Pairing, tested: readonly MeltLimit[], print: MeltAt): FirstLayer {
  const { filament, machine } = pairing;
  const stated = chooseStatement(filament.data.firstLayerNozzleTemperature, conditionsOf(pairing));
  if (stated === null) {
    return {
      melt: print,
      isStated: false,
      sourcedValues: [],
      note: 'Not stated: printed at the temperature of the table.',
    };
  }
  const settable = settableNear(pairing, stated.value);
  const melt = nearestKnown(tested, settable, print);
  const limit = settable < stated.value ? hotEndLimit(pairing) : null;
  return {
    melt,
    isStated: true,
    sourcedValues: [
      sourcedStatement(filament, stated),
      ...(limit === null ? [] : [sourcedStatement(machine, limit)]),
    ],
    note: noteOf(pairing, stated.value, settable, melt.nozzleTemperature),
  };
}

/** Inside of the window of the filament, at most what the hot end may be set to, rounded down where that stays inside. */
function settableNear(pairing: Pairing, wanted: DegreesCelsius): DegreesCelsius {
  const window = nozzleWindow(pairing)?.value ?? { low: 0, high: Number.POSITIVE_INFINITY };
  const inside = Math.min(Math.max(wanted, window.low), window.high, hottestSetting(pairing));
  const rounded = roundDown(inside, pairing.policy.data.rounding.temperature ?? 1);
  return rounded < window.low ? inside : rounded;
}

/** The limit at a temperature, else at the nearest one that was tested. */
function nearestKnown(tested: readonly MeltLimit[], wanted: DegreesCelsius, print: MeltAt): MeltAt {
  const there = meltAt(tested, wanted);
  if (there.ok) return there.value;
  const distance = ({ nozzleTemperature }: MeltLimit) => Math.abs(nozzleTemperature - wanted);
  const [nearest] = [...tested].sort((a, b) => distance(a) - distance(b));
  const found = nearest === undefined ? there : meltAt(tested, nearest.nozzleTemperature);
  return found.ok ? found.value : print;
}

function noteOf(
  pairing: Pairing,
  stated: DegreesCelsius,
  settable: DegreesCelsius,
  value: DegreesCelsius,
): string {
  if (value === stated) return '';
  if (value !== settable) return `${stated} Cel is asked for, and no limit is known there.`;
  const hottest = hottestSetting(pairing);
  return settable < stated && stated > hottest
    ? `Cut at the ${hottest} Cel that the hot end may be set to; ${stated} Cel is asked for.`
    : `${stated} Cel is asked for.`;
}
