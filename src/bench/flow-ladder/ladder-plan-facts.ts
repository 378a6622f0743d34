import { amountOf } from '../../units/rounded.ts';
import type { LadderPlan } from './ladder-plan.ts';

/** The numbers of a ladder for programs. */
export function ladderPlanFacts(ladder: LadderPlan): Record<string, unknown> {
  const { nozzleTemperature, allowed, expected, steps, piece, totals, resolution } = ladder;
  return {
    nozzleTemperature: amountOf(nozzleTemperature.value, 'Cel'),
    allowedNozzleTemperature: { low: amountOf(allowed.low, 'Cel'), high: amountOf(allowed.high, 'Cel') },
    prediction: expected.facts,
    step: amountOf(steps.size, 'mm3/s'),
    scaleResolution: amountOf(resolution, 'g'),
    piece: {
      feedLength: amountOf(piece.length, 'mm'),
      mass: amountOf(piece.mass, 'g'),
      scaleShare: amountOf(piece.scaleShare, '1'),
    },
    filamentNeeded: { length: amountOf(totals.length, 'mm'), mass: amountOf(totals.mass, 'g') },
    feedingTime: amountOf(totals.feeding, 's'),
    benchTime: amountOf(totals.bench, 's'),
  };
}
