import { resultOf } from '../../bench/methods.ts';
import type { ReduceById } from '../../bench/reducing-once.ts';
import type { ReducedResult } from '../../bench/reduction.ts';
import type { EvidenceContext } from '../../evidence/evidence-context.ts';
import { standingOf } from '../../evidence/standing.ts';
import { standingText } from '../../evidence/standing-text.ts';
import {
  beyondBound,
  type Conformance,
  conformanceOf,
  conformanceText,
} from '../../knowledge/conformance.ts';
import { type DecisionRule, sameTemperature } from '../../knowledge/decision-rule.ts';
import { familiesOf } from '../../knowledge/families.ts';
import { basisWords, isSimulated, originOf } from '../../knowledge/origin.ts';
import type { FittedPairing } from '../../knowledge/pairing.ts';
import { nozzleWindow } from '../../prediction/nozzle-window.ts';
import { predictLimit } from '../../prediction/predict-limit.ts';
import { flowRangeText, flowText } from '../../prediction/prediction-text.ts';
import type { Statement } from '../../registry/generated/documents.ts';
import type { Registry } from '../../registry/registry.ts';
import { statementsOf } from '../../registry/statement.ts';
import { middle } from '../../statistics/middle.ts';
import type { Range } from '../../units/canonical.ts';
import { shown, shownNumber, shownRange } from '../../units/wording.ts';
import type { ClaimedFlow, MatchFlow, MatchReason } from './match-verdict.ts';

/** Below this share of what is claimed, a measured flow is a reason of its own (common practice, no source). */
const disappointing = 0.5;

/** The highest flow that was measured with a nozzle, at any temperature that the hot end may have; null where none was. */
export function measuredFlow(
  pairing: FittedPairing,
  { registry, reduce }: Pick<EvidenceContext, 'registry' | 'reduce'>,
): MatchFlow | null {
  const best = bestMeasured(pairing);
  if (best?.at?.nozzleTemperature === undefined) return null;
  const reduced = best.evidence === undefined ? undefined : flowOfTrial(best.evidence, reduce);
  return {
    value: best.value,
    range: best.interval ?? (reduced === undefined ? null : closed(reduced)),
    basis: 'measured',
    isLowerBound: reduced?.censored === 'above',
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

function flowOfTrial(trial: string, reduce: ReduceById): ReducedResult | undefined {
  const reduced = reduce(trial);
  return reduced.ok ? resultOf(reduced.value, 'meltFlow') : undefined;
}

/** The interval of a result; null where it is open. */
function closed({ interval: { low, high } }: ReducedResult): Range | null {
  return low === null || high === null ? null : { low, high };
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

/** What is claimed for the nozzle of a pairing, and how probably its flow reaches that; null where nothing is claimed. */
export function claimedFlow(pairing: FittedPairing, flow: MatchFlow): ClaimedFlow | null {
  const claim = claimFor(pairing);
  return claim === null ? null : { claimed: claim.value, conformance: conformanceBy(claim, flow) };
}

/**
 * A flow that was measured hotter than a claim names tells nothing of the claim; one measured colder says that the claim
 * holds at least so probably, since the limit rises with the temperature.
 */
function conformanceBy(
  { value: claimed, at = {} }: Statement<number>,
  { value, range, basis, isLowerBound, nozzleTemperature }: MatchFlow,
): Conformance | null {
  const hotter = nozzleTemperature - (at.nozzleTemperature ?? nozzleTemperature);
  if (basis !== 'measured' || hotter > sameTemperature) return null;
  if (isLowerBound) return value >= claimed ? beyondBound : null;
  const orBetter = hotter < -sameTemperature;
  return range && conformanceOf(claimed, { ...range, median: middle(range) }, { orBetter });
}

/** The flow as a reason, against what is claimed for the nozzle, by a decision rule. */
export function flowReasons(
  pairing: FittedPairing,
  flow: MatchFlow | null,
  claim: ClaimedFlow | null,
  rule: DecisionRule,
): MatchReason[] {
  if (flow === null) return [];
  const found = `${flow.isLowerBound ? 'at least ' : ''}${flowText(flow.value)} ${basisWords(flow.basis, flow.isSimulated)} at ${shown(flow.nozzleTemperature, 'temperature')} with ${pairing.nozzle.id}${rangeText(flow)}`;
  if (claim === null) return [{ aspect: 'flow', verdict: 'suits', text: found }];
  const { claimed, conformance } = claim;
  const share = flow.value / claimed;
  const holds =
    conformance === null ? '' : `, which holds with a probability of ${conformanceText(conformance)}`;
  return [
    {
      aspect: 'flow',
      verdict: disappoints(flow, claimed, rule) ? 'limited' : 'suits',
      text: `${found}; ${shownNumber(Math.round(100 * share))} % of the ${shown(claimed, 'volumeFlow')} claimed for this nozzle${holds}`,
    },
  ];
}

/** Whether a measured flow stays below half of what is claimed: with its guard band, or the value alone. */
function disappoints(
  { value, range, basis, isLowerBound }: MatchFlow,
  claimed: number,
  rule: DecisionRule,
): boolean {
  if (basis !== 'measured' || isLowerBound) return false;
  const decisive = rule === 'guardedAcceptance' ? Math.min(value, range?.low ?? value) : value;
  return decisive < disappointing * claimed;
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

/** The highest flow that is claimed for the nozzle and the material of a pairing. */
function claimFor({ hotEnd, nozzle, filament }: FittedPairing): Statement<number> | null {
  const claims = (hotEnd.meltFlow ?? []).filter(
    ({ basis, at }) =>
      basis === 'claimed' &&
      (at?.nozzle ?? nozzle.id) === nozzle.id &&
      (at?.polymer ?? filament.data.polymer) === filament.data.polymer &&
      (at?.filament ?? filament.id) === filament.id,
  );
  return claims.toSorted((a, b) => b.value - a.value)[0] ?? null;
}
