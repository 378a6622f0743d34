import type { FittedPairing } from '../../knowledge/pairing.ts';
import type { SiblingTrial } from '../../prediction/sibling-trials.ts';
import type { LadderPlan } from './ladder-plan.ts';

interface Amount {
  readonly value: number;
  readonly unit: string;
}

/** A number of a plan for programs, to six digits. */
function amount(value: number, unit: string): Amount {
  return { value: Number(value.toPrecision(6)), unit };
}

const flow = (value: number) => amount(value, 'mm3/s');

/** The numbers of a ladder for programs. */
export function ladderFacts(
  { machine, nozzle, filament }: FittedPairing,
  ladder: LadderPlan,
): Record<string, unknown> {
  const { prediction, setup, window, steps, piece, totals, resolution } = ladder;
  return {
    machine: machine.id,
    nozzle: nozzle.id,
    filament: filament.id,
    nozzleTemperature: amount(setup.nozzleTemperature, 'Cel'),
    allowedNozzleTemperature: { low: amount(window.low, 'Cel'), high: amount(window.high, 'Cel') },
    prediction: {
      from: prediction.from,
      trials: prediction.trials,
      value: flow(prediction.value),
      range: { low: flow(prediction.range.low), high: flow(prediction.range.high) },
      cappedBy: prediction.cappedBy?.by ?? null,
      siblings: prediction.siblings.map(siblingFacts),
      stated: prediction.stated && {
        basis: prediction.stated.basis,
        value: flow(prediction.stated.value),
        scaled: flow(prediction.stated.scaled),
      },
      conduction: prediction.capacity && flow(prediction.capacity.flow),
      caps: prediction.caps.map((cap) => ({ by: cap.by, flow: flow(cap.flow), text: cap.text })),
    },
    step: flow(steps.size),
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

function siblingFacts({ id, kinship, limit, scaled, spread }: SiblingTrial): Record<string, unknown> {
  return {
    trial: id,
    kinship,
    measured: flow(limit.value),
    censored: limit.censored,
    scaled: flow(scaled),
    range: { low: flow(scaled / spread), high: flow(scaled * spread) },
  };
}
