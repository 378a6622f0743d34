import { conditionsOf } from '../../knowledge/pairing.ts';
import { filamentFeed, filamentMass } from '../../physics/filament-geometry.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { type Result, refusal, success } from '../../result.ts';
import type { Grams, GramsPerCubicMillimetre, Millimetres, Seconds } from '../../units/canonical.ts';
import type {
  AllowedTemperatures,
  ExpectedFlow,
  LayoutRequest,
  PlannedTemperature,
} from '../layout/layout-request.ts';
import type { PlanProblem } from '../layout/plan-problem.ts';
import { type Piece, pieceFor } from './piece-length.ts';
import { type LadderFeed, ladderFeeds, type PlannedFlows, plannedFlows } from './planned-flows.ts';

/** Two pieces a step tell how repeatable they are. */
const repeats = 2;
/** Purged before each piece, so that it begins with fresh melt, in mm; warming up and handling a piece, in s (common practice, no source). */
const purge = 100;
const warmUp = 900;
const handling = 45;
/** Between the temperatures of a series, in K. */
const seriesStep = 10;

/** A flow ladder with its numbers, before it is put into words. */
export interface LadderPlan {
  readonly nozzleTemperature: PlannedTemperature;
  readonly allowed: AllowedTemperatures;
  /** Temperatures for further ladders, °C, for the limit against the temperature. */
  readonly series: readonly number[];
  readonly expected: ExpectedFlow;
  readonly steps: PlannedFlows;
  readonly feeds: readonly LadderFeed[];
  readonly repeats: number;
  readonly resolution: Grams;
  /** Of the filament, as its profile states it. */
  readonly density: GramsPerCubicMillimetre;
  readonly piece: Piece;
  readonly totals: {
    /** Filament for all pieces, with what is purged before each. */
    readonly length: Millimetres;
    readonly mass: Grams;
    readonly feeding: Seconds;
    /** With warming up, cutting, weighing and writing down. */
    readonly bench: Seconds;
  };
}

/** The numbers of a flow ladder for a pairing. */
export function ladderPlan(request: LayoutRequest): Result<LadderPlan, PlanProblem> {
  const { pairing, massResolution: resolution } = request;
  const { id, data: filament } = pairing.filament;
  const density = chooseStatement(filament.density, conditionsOf(pairing));
  if (density === null) {
    return refusal(
      'nothingKnown',
      `The profile of ${id} states no density`,
      `State it in filaments/${id}.yaml.`,
    );
  }
  const allowed = request.allowedTemperatures();
  if (!allowed.ok) return allowed;
  const temperature = request.nozzleTemperature();
  if (!temperature.ok) return temperature;
  const predicted = request.expectedFlow(temperature.value.value);
  if (!predicted.ok) return predicted;
  const expected = predicted.value;
  const steps = plannedFlows(expected.value, expected.range, expected.highest);
  const { diameter } = filament;
  const piece = pieceFor(
    resolution,
    density.value,
    diameter,
    filamentFeed(steps.flows.at(-1) ?? 0, diameter),
  );
  const feeds = ladderFeeds(steps, diameter, piece.length);
  return success({
    nozzleTemperature: temperature.value,
    allowed: allowed.value,
    series: seriesIn(allowed.value),
    ...{ expected, steps, feeds, repeats, resolution, piece },
    density: density.value,
    totals: totalsOf(feeds, piece, density.value, diameter),
  });
}

/** At most four temperatures over the window, for the limit against the temperature. */
function seriesIn({ low, high }: AllowedTemperatures): number[] {
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
  diameter: Millimetres,
): LadderPlan['totals'] {
  const pieces = feeds.length * repeats;
  const length = pieces * (piece.length + purge);
  const feeding = feeds.reduce(
    (sum, { duration }) => sum + duration * repeats * (1 + purge / piece.length),
    0,
  );
  return {
    length,
    mass: filamentMass(length, density, diameter),
    feeding,
    bench: warmUp + feeding + pieces * handling,
  };
}
