import { failure, type Result, success } from '../../../result.ts';
import type { Fraction } from '../../../units/canonical.ts';
import type { BenchProblem } from '../../bench-problem.ts';
import type { ReducedResult } from '../../reduction.ts';
import type { Observations } from '../../sheet/observations.ts';
import { checkReadings, checkSettings } from '../flow-ladder-checks.ts';
import type { FlowLadderSettings } from '../flow-ladder-settings.ts';
import { type LadderStep, ladderSteps, type WeighedPiece, weighedPieces } from '../flow-ladder-steps.ts';
import { reduceFlowLadder } from '../reduce-flow-ladder.ts';
import { aroundLimit } from './around-limit.ts';
import { coarseFlow } from './coarse-flow.ts';
import {
  type Ceiling,
  fewestFlows,
  type LadderOutlook,
  type LadderSoFar,
  missingShare,
  type NextPiece,
} from './feeding-advice.ts';

/**
 * The flow to feed next, coarse first, then around the onset: always the piece that is expected to narrow the interval
 * most; and when to stop. It never goes above the ladder's highest flow, a halt, or a flow at which far too
 * much is missing. The same pieces give the same answer. Problems: readings that cannot be reduced.
 */
export function nextPiece(
  { observations, settings }: LadderSoFar,
  outlook: LadderOutlook,
): Result<NextPiece, readonly BenchProblem[]> {
  const problems = [...checkSettings(settings), ...checkReadings(observations)];
  if (problems.length > 0) return failure(problems);
  const counted = countedPieces(observations, settings);
  const steps = ladderSteps(counted, settings.massResolution);
  const ceiling = safeCeiling(steps, settings, outlook);
  const said = { pieces: observations.rows.length, flows: flowsOf(observations), ceiling };
  const known = { pieces: counted, steps, settings, outlook, ceiling: ceiling.flow };
  const coarse = (result: ReducedResult | null) =>
    success({ ...said, result, width: null, next: coarseFlow({ ...known, result }) });
  if (steps.length < fewestFlows) return coarse(null);
  const reduced = reduceFlowLadder(observations, settings);
  if (!reduced.ok) return reduced;
  const result = reduced.value.results[0] ?? null;
  const width = result === null ? null : relativeWidth(result);
  if (result === null || width === null) return coarse(result);
  return success({ ...said, result, width, next: aroundLimit({ ...known, result, width }) });
}

function flowsOf({ columns: { commandedFlow = [] } }: Observations): NextPiece['flows'] {
  if (commandedFlow.length === 0) return null;
  const low = Math.min(...commandedFlow);
  return { low, high: Math.max(...commandedFlow), count: new Set(commandedFlow).size };
}

function countedPieces(observations: Observations, settings: FlowLadderSettings): WeighedPiece[] {
  const { haltedAt = Number.POSITIVE_INFINITY } = settings;
  return weighedPieces(observations, settings).filter(({ flow }) => flow < haltedAt);
}

/** So much missing, or so much more than is accepted, and a hot end is near to grinding its filament (common practice, no source). */
const farPast = { missing: 0.25, beyondAccepted: 0.15 };

/** Strictly below the flow of a halt. */
const belowHalt = 0.99;

function safeCeiling(
  steps: readonly LadderStep[],
  { haltedAt, acceptedDeficit }: FlowLadderSettings,
  { highest }: LadderOutlook,
): Ceiling {
  const most = Math.max(farPast.missing, acceptedDeficit + farPast.beyondAccepted);
  const past = steps.find((step) => missingShare(step, steps) > most)?.flow;
  const ceilings: Ceiling[] = [
    { flow: highest, reason: 'ladder' },
    ...(past === undefined ? [] : [{ flow: past, reason: 'farPast' as const }]),
    ...(haltedAt === undefined ? [] : [{ flow: belowHalt * haltedAt, reason: 'halt' as const }]),
  ];
  return ceilings.reduce((lowest, each) => (each.flow < lowest.flow ? each : lowest));
}

function relativeWidth({ value, interval: { low, high } }: ReducedResult): Fraction | null {
  return low === null || high === null ? null : (high - low) / value;
}
