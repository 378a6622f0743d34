import { type FlowLimit, statedFlowLimits } from '../knowledge/flow-limits.ts';
import { isNozzleTemperature } from '../knowledge/nozzle-temperature-figure.ts';
import type { AnyProfile } from '../registry/profile.ts';
import type { EvidenceContext } from './evidence-context.ts';
import { isSupported } from './is-supported.ts';

/**
 * Every flow limit of a machine or a filament whose hot end is known. A measured one that its trial does not support
 * is left out, and so is one at an impossible temperature: other rules have said so, and one slip gives one finding.
 */
export function flowLimits(profile: AnyProfile, context: EvidenceContext): FlowLimit[] {
  return statedFlowLimits(profile, context.registry).filter(
    ({ statement, nozzleTemperature }) =>
      isSupported(statement, context) &&
      (nozzleTemperature === null || isNozzleTemperature(nozzleTemperature)),
  );
}
