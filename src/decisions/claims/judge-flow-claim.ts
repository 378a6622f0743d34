import { sameTemperature } from '../../knowledge/decision-rule.ts';
import { fastestFeed } from '../../knowledge/filament-diameters.ts';
import { leastHeat } from '../../knowledge/melt-heat.ts';
import { flowOfFeed } from '../../physics/filament-geometry.ts';
import type { Trial } from '../../registry/generated/documents.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { highestStated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import type { Claim } from './claim.ts';
import { evidenceFrom, measuredBeside, trialsOf } from './claim-evidence.ts';
import {
  type ClaimContext,
  type ClaimEvidence,
  type ClaimVerdict,
  isCompatible,
  notReachableClaim,
  untestedClaim,
} from './claim-verdict.ts';
import { judgeMeasured } from './judge-measured.ts';

/**
 * A claimed flow against the ladders with the nozzle and the family that it names. Ladders at its temperature or above
 * decide, since the limit rises with the temperature; a colder one can only confirm the claim.
 */
export function judgeFlowClaim(
  machine: Profile<'machine'>,
  claim: Claim,
  context: ClaimContext,
): ClaimVerdict {
  const { registry } = context;
  const { value, at = {} } = claim.statement;
  const trials = trialsOf(registry, machine.id, claim.hotEnd).filter(({ data }) =>
    isAbout(registry, data, claim),
  );
  const all = [
    ...trials.flatMap((trial) => evidenceFrom(trial, 'meltFlow', context) ?? []),
    ...measuredBeside(machine, claim, context),
  ];
  const wanted = at.nozzleTemperature ?? Number.NEGATIVE_INFINITY;
  const isHotEnough = ({ nozzleTemperature }: ClaimEvidence) =>
    (nozzleTemperature ?? Number.NEGATIVE_INFINITY) >= wanted - sameTemperature;
  const deciding = all.filter((each) => isHotEnough(each) || isCompatible(value, each, false));
  const nearest = deciding.toSorted((a, b) => distance(a, wanted) - distance(b, wanted) || b.value - a.value);
  const rest = all.filter((each) => !deciding.includes(each));
  const judged = nearest.length === 0 ? null : judgeMeasured(claim, [...nearest, ...rest], context.rule);
  return judged ?? notReachable(registry, claim) ?? untested(claim, rest);
}

/** How far the temperature of a ladder is from the one that a claim names; none is named where it is infinite. */
function distance({ nozzleTemperature }: ClaimEvidence, wanted: number): number {
  return nozzleTemperature === null || !Number.isFinite(wanted) ? 0 : Math.abs(nozzleTemperature - wanted);
}

/** Whether a ladder was run with the nozzle and the material of a claim; a filled grade says nothing of the plain polymer. */
function isAbout(registry: Registry, trial: Trial, { statement: { at = {} } }: Claim): boolean {
  const filament = registry.filament.get(trial.filament)?.data;
  if (at.nozzle !== undefined && at.nozzle !== trial.nozzle) return false;
  if (at.filament !== undefined) return at.filament === trial.filament;
  if (at.polymer === undefined) return true;
  return filament?.polymer === at.polymer && filament.fillers === undefined;
}

/** More than the heater melts or the drive feeds. */
function notReachable(registry: Registry, { statement, hotEnd }: Claim): ClaimVerdict | null {
  if (hotEnd === null) return null;
  const { value, at = {} } = statement;
  const family = registry.polymer.get(at.polymer ?? '')?.data;
  const heat = leastHeat({
    families: family === undefined ? [] : [family],
    nozzleTemperature: at.nozzleTemperature ?? null,
  });
  const power = highestStated(hotEnd.heaterPower);
  const fed = flowOfFeed(fastestFeed, hotEnd.filamentDiameter);
  const reason =
    power !== null && heat.perVolume * value > power
      ? `melting that much takes at least ${shown(heat.perVolume * value, 'power')}, and the heater has ${shown(power, 'power')} (assumed: ${heat.assumptions})`
      : value > fed
        ? `a drive feeds ${shown(hotEnd.filamentDiameter, 'length')} filament at ${fastestFeed} mm/s at most, which is ${shown(fed, 'volumeFlow')}`
        : null;
  return reason === null ? null : notReachableClaim(reason);
}

function untested({ statement: { at = {} } }: Claim, colder: readonly ClaimEvidence[]): ClaimVerdict {
  const setup = [at.nozzle, at.filament ?? at.polymer].filter((part) => part !== undefined).join(' and ');
  const text =
    colder.length > 0
      ? 'tested only at lower temperatures, where the hot end melts less'
      : `the registry has no flow ladder${setup === '' ? '' : ` with ${setup}`}`;
  return untestedClaim(text, colder);
}
