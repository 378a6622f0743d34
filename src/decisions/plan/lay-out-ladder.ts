import { usualMassResolution } from '../../bench/facts/instrument-facts.ts';
import type { ReduceById } from '../../bench/reducing-once.ts';
import { familiesOf } from '../../knowledge/families.ts';
import { conditionsOf, type FittedPairing } from '../../knowledge/pairing.ts';
import { strandFeed, strandMass } from '../../physics/strand.ts';
import { type NozzleWindow, nozzleWindow } from '../../prediction/nozzle-window.ts';
import { predictLimit } from '../../prediction/predict-limit.ts';
import type { Registry } from '../../registry/registry.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { failure, type Result, success } from '../../result.ts';
import type { GramsPerCubicMillimetre } from '../../units/canonical.ts';
import { type Piece, pieceFor } from './feed-length.ts';
import type { LadderPlan } from './ladder-plan.ts';
import { type LadderFeed, ladderFeeds, ladderSteps } from './ladder-steps.ts';
import type { PlanRequest } from './plan-request.ts';
import { planTemperature } from './plan-temperature.ts';

/** Two pieces a step tell how repeatable they are. */
const repeats = 2;
/** Purged before each piece, so that it begins with fresh melt, in mm; warming up and handling a piece, in s (common practice, no source). */
const purge = 100;
const warmUp = 900;
const handling = 45;
/** Between the temperatures of a series, in K. */
const seriesStep = 10;

/** The numbers of a flow ladder for a pairing; the error is a sentence for the user. */
export function layOutLadder(
  registry: Registry,
  pairing: FittedPairing,
  request: PlanRequest,
  reduce: ReduceById,
): Result<LadderPlan, string> {
  const { filament, hotEnd, nozzle } = pairing;
  const density = chooseStatement(filament.data.density, conditionsOf(pairing));
  if (density === null) return failure(`The profile of ${filament.id} states no density.`);
  const families = familiesOf(filament.data, registry);
  const window = nozzleWindow(pairing, families);
  if (!window.ok) return window;
  const temperature = planTemperature(pairing, window.value, request.nozzleTemperature);
  if (!temperature.ok) return temperature;
  const setup = {
    hotEnd,
    nozzle,
    filament: filament.data,
    families,
    nozzleTemperature: temperature.value.value,
  };
  const predicted = predictLimit(registry, pairing, setup, reduce);
  if (!predicted.ok) return predicted;
  const resolution = request.resolution ?? usualMassResolution;
  const highest = Math.min(...predicted.value.caps.map(({ flow }) => flow));
  const steps = ladderSteps(predicted.value.value, predicted.value.range, highest);
  const { diameter } = filament.data;
  const piece = pieceFor(resolution, density.value, diameter, strandFeed(steps.flows.at(-1) ?? 0, diameter));
  const feeds = ladderFeeds(steps, diameter, piece.length);
  return success({
    setup,
    prediction: predicted.value,
    window: window.value,
    temperatureReason: temperature.value.reason,
    series: seriesIn(window.value),
    steps,
    feeds,
    repeats,
    resolution,
    piece,
    highest,
    totals: totalsOf(feeds, piece, density.value, diameter),
  });
}

/** At most four temperatures over the window, for the limit against the temperature. */
function seriesIn({ low, high }: NozzleWindow): number[] {
  const first = Math.ceil(low / seriesStep) * seriesStep;
  const count = Math.floor((high - first) / seriesStep) + 1;
  const every = Math.max(1, Math.ceil(count / 4));
  return Array.from({ length: Math.max(0, count) }, (_, index) => first + index * seriesStep).filter(
    (_, index) => index % every === 0,
  );
}

function totalsOf(
  feeds: readonly LadderFeed[],
  piece: Piece,
  density: GramsPerCubicMillimetre,
  diameter: number,
): LadderPlan['totals'] {
  const pieces = feeds.length * repeats;
  const length = pieces * (piece.length + purge);
  const feeding = feeds.reduce(
    (sum, { duration }) => sum + duration * repeats * (1 + purge / piece.length),
    0,
  );
  return {
    length,
    mass: strandMass(length, density, diameter),
    feeding,
    bench: warmUp + feeding + pieces * handling,
  };
}
