import { type FlowLimit, statedFlowLimits } from '../knowledge/flow-limits.ts';
import { isNozzleTemperature } from '../knowledge/nozzle-temperature-figure.ts';
import { restsOnTrial } from '../knowledge/rests-on-trial.ts';
import type { AnyProfile } from '../registry/profile.ts';
import type { EvidenceContext } from './evidence-context.ts';
import { supportFaults } from './limit-support.ts';

/**
 * Every flow limit of a machine or a filament whose hot end is known. A measured one that its trial does not support
 * is left out, and so is one at an impossible temperature: other rules have said so, and one slip gives one finding.
 */
export function flowLimits(profile: AnyProfile, context: EvidenceContext): FlowLimit[] {
  return statedFlowLimits(profile, context.registry).filter(
    (limit) =>
      isSupported(profile, limit, context) &&
      (limit.nozzleTemperature === null || isNozzleTemperature(limit.nozzleTemperature)),
  );
}

/** Whether a flow limit rests on no trial, or is not above what the readings of its trial give. */
function isSupported(profile: AnyProfile, { path, statement }: FlowLimit, context: EvidenceContext): boolean {
  const { registry } = context;
  if (!restsOnTrial(statement, registry)) return true;
  const trial = registry.trial.get(statement.evidence ?? '');
  if (!registry.filament.has(trial?.data.filament ?? '')) return false;
  const faults = [...supportFaults(profile, { path: path.slice(0, -1), statement }, context)];
  return faults.every(({ part }) => part === 'interval');
}
