import type { LadderPlan } from './ladder-plan.ts';

interface Amount {
  readonly value: number;
  readonly unit: string;
}

/** A number of a plan for programs, to six digits. */
function amount(value: number, unit: string): Amount {
  return { value: Number(value.toPrecision(6)), unit };
}

/** The numbers of a ladder for programs. */
export function ladderPlanFacts(ladder: LadderPlan): Record<string, unknown> {
  const { nozzleTemperature, allowed, expected, steps, piece, totals, resolution } = ladder;
  return {
    nozzleTemperature: amount(nozzleTemperature.value, 'Cel'),
    allowedNozzleTemperature: { low: amount(allowed.low, 'Cel'), high: amount(allowed.high, 'Cel') },
    prediction: expected.facts,
    step: amount(steps.size, 'mm3/s'),
    scaleResolution: amount(resolution, 'g'),
    piece: {
      feedLength: amount(piece.length, 'mm'),
      mass: amount(piece.mass, 'g'),
      scaleShare: amount(piece.scaleShare, '1'),
    },
    strand: { length: amount(totals.length, 'mm'), mass: amount(totals.mass, 'g') },
    feedingTime: amount(totals.feeding, 's'),
    benchTime: amount(totals.bench, 's'),
  };
}
