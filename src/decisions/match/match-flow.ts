import { resultOf } from '../../bench/methods.ts';
import type { ReduceById } from '../../bench/reducing-once.ts';
import type { EvidenceContext } from '../../evidence/evidence-context.ts';
import { standingOf } from '../../evidence/standing.ts';
import { standingText } from '../../evidence/standing-text.ts';
import { familiesOf } from '../../knowledge/families.ts';
import { basisWords, isSimulated, originOf } from '../../knowledge/origin.ts';
import type { FittedPairing } from '../../knowledge/pairing.ts';
import { nozzleWindow } from '../../prediction/nozzle-window.ts';
import { predictLimit } from '../../prediction/predict-limit.ts';
import { flowRangeText, flowText } from '../../prediction/prediction-text.ts';
import type { Statement } from '../../registry/generated/documents.ts';
import type { Registry } from '../../registry/registry.ts';
import { statementsOf } from '../../registry/statement.ts';
import { shown, shownNumber, shownRange } from '../../units/wording.ts';
import type { MatchFlow, MatchReason } from './match-verdict.ts';

/** Below this share of what is claimed, a measured flow is a reason of its own (common practice, no source). */
const disappointing = 0.5;

/** The highest flow that was measured with a nozzle, at any temperature that the hot end may have; null where none was. */
export function measuredFlow(
  pairing: FittedPairing,
  { registry, reduce }: Pick<EvidenceContext, 'registry' | 'reduce'>,
): MatchFlow | null {
  const best = bestMeasured(pairing);
  if (best?.at?.nozzleTemperature === undefined) return null;
  return {
    value: best.value,
    range: best.interval ?? null,
    basis: 'measured',
    isLowerBound: best.evidence !== undefined && endedEarly(best.evidence, reduce),
    trials: best.evidence === undefined ? [] : [best.evidence],
    isSimulated: isSimulated(best, registry),
    nozzleTemperature: best.at.nozzleTemperature,
  };
}

/**
 * What `check` finds about the evidence of the highest measured flow: a limit of the pairing until it is fixed, and no
 * limit where it is acknowledged.
 */
export function evidenceReasons(pairing: FittedPairing, context: EvidenceContext): MatchReason[] {
  const best = bestMeasured(pairing);
  if (best === undefined) return [];
  const profile = pairing.filament.data.meltFlow?.includes(best) ? pairing.filament : pairing.machine;
  const placed = [...statementsOf(profile)].find(({ statement }) => statement === best);
  const faults = placed === undefined ? [] : standingOf(profile, placed, context).faults;
  return faults.map((fault) => ({
    aspect: 'flow',
    verdict: fault.acknowledged === null ? 'limited' : 'suits',
    text: `the measured flow ${standingText(fault)}: ${fault.message}`,
    fault,
  }));
}

function bestMeasured(pairing: FittedPairing): Statement<number> | undefined {
  return measuredOf(pairing).toSorted((a, b) => b.value - a.value)[0];
}

function endedEarly(trial: string, reduce: ReduceById): boolean {
  const reduced = reduce(trial);
  return reduced.ok && resultOf(reduced.value, 'meltFlow')?.censored === 'above';
}

function measuredOf({ filament, hotEnd, machine, nozzle }: FittedPairing): Statement<number>[] {
  const isHere = ({ basis, at = {} }: Statement<number>) =>
    basis === 'measured' &&
    at.nozzle === nozzle.id &&
    (at.machine ?? machine.id) === machine.id &&
    (at.filament ?? filament.id) === filament.id;
  return [
    ...(filament.data.meltFlow ?? []).filter(({ at }) => at?.machine !== undefined),
    ...(hotEnd.meltFlow ?? []).filter(({ at }) => at?.filament !== undefined),
  ].filter(isHere);
}

/** The flow that is expected of a pairing in the middle of its window; null where nothing tells. */
export function expectedFlow(
  registry: Registry,
  pairing: FittedPairing,
  reduce: ReduceById,
): MatchFlow | null {
  const { hotEnd, nozzle, filament } = pairing;
  const families = familiesOf(filament.data, registry);
  const window = nozzleWindow(pairing, families);
  if (!window.ok) return null;
  const nozzleTemperature = (window.value.low + window.value.high) / 2;
  const setup = { hotEnd, nozzle, filament: filament.data, families, nozzleTemperature };
  const predicted = predictLimit(registry, pairing, setup, reduce);
  if (!predicted.ok) return null;
  const { value, range, trials } = predicted.value;
  const { simulated } = originOf(registry, { trials });
  return {
    ...{ value, range, basis: 'expected', isLowerBound: false, trials, nozzleTemperature },
    isSimulated: simulated.length > 0,
  };
}

/** The flow as a reason, against what is claimed for the nozzle. */
export function flowReasons(pairing: FittedPairing, flow: MatchFlow | null): MatchReason[] {
  if (flow === null) return [];
  const claim = claimFor(pairing);
  const found = `${flow.isLowerBound ? 'at least ' : ''}${flowText(flow.value)} ${basisWords(flow.basis, flow.isSimulated)} at ${shown(flow.nozzleTemperature, 'temperature')} with ${pairing.nozzle.id}${rangeText(flow)}`;
  if (claim === null) return [{ aspect: 'flow', verdict: 'suits', text: found }];
  const share = flow.value / claim;
  const low = flow.basis === 'measured' && !flow.isLowerBound && share < disappointing;
  return [
    {
      aspect: 'flow',
      verdict: low ? 'limited' : 'suits',
      text: `${found}; ${shownNumber(Math.round(100 * share))} % of the ${shown(claim, 'volumeFlow')} claimed for this nozzle`,
    },
  ];
}

function rangeText({ range, basis, trials }: MatchFlow): string {
  const parts = [
    ...(range === null
      ? []
      : [basis === 'measured' ? `95 % interval ${shownRange(range, 'volumeFlow')}` : flowRangeText(range)]),
    ...(trials.length === 0 ? [] : [trials.length > 1 ? `${trials.length} trials` : `trial ${trials[0]}`]),
  ];
  return parts.length === 0 ? '' : ` (${parts.join(', ')})`;
}

function claimFor({ hotEnd, nozzle, filament }: FittedPairing): number | null {
  const claims = (hotEnd.meltFlow ?? []).filter(
    ({ basis, at }) =>
      basis === 'claimed' &&
      (at?.nozzle ?? nozzle.id) === nozzle.id &&
      (at?.polymer ?? filament.data.polymer) === filament.data.polymer &&
      (at?.filament ?? filament.id) === filament.id,
  );
  return claims.length === 0 ? null : Math.max(...claims.map(({ value }) => value));
}
