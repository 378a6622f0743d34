import { roundedMoveDuration } from '../../physics/rounded-ramps.ts';
import { choleskyFactor } from '../../statistics/cholesky.ts';
import { type NonlinearFit, nonlinearLeastSquares } from '../../statistics/nonlinear-least-squares.ts';
import type { Shuttle, ShuttleRun } from './shuttle-run.ts';

/**
 * A fit of the times for one rounding of the ramps. The parameters are the logarithms of the reached speeds and
 * accelerations in the order of the commanded ones, then the pause at each turn in ms, so that all are of a similar size.
 */
export interface ShuttleFit extends Pick<NonlinearFit, 'parameters' | 'degreesOfFreedom'> {
  readonly rounding: number;
  /** Lower triangle whose product with its transpose is the covariance of the parameters. */
  readonly factor: readonly (readonly number[])[];
  /** Standard deviation of a time about the fit, s. */
  readonly scatter: number;
  /** Logarithm of how well the times speak for the rounding, up to a constant. */
  readonly evidence: number;
}

/** Position of the parameters of a commanded speed and of a commanded acceleration. */
interface Place {
  readonly speed: number;
  readonly acceleration: number;
}

/** Where the parameters of a shuttle stand. */
function placeOf(
  { speed, acceleration }: Pick<Shuttle, 'speed' | 'acceleration'>,
  { speeds, accelerations }: ShuttleRun,
): Place {
  return { speed: speeds.indexOf(speed), acceleration: speeds.length + accelerations.indexOf(acceleration) };
}

const milliseconds = 1000;

/** Time of one move over a length by the parameters, s. */
function moveTime(length: number, place: Place, parameters: readonly number[], rounding: number): number {
  const speed = Math.exp(parameters[place.speed] ?? Number.NaN);
  const acceleration = Math.exp(parameters[place.acceleration] ?? Number.NaN);
  const pause = (parameters.at(-1) ?? Number.NaN) / milliseconds;
  return pause + roundedMoveDuration({ length, speed, acceleration, rounding });
}

/** Time of a row of moves by a fit, s; NaN where the fit knows nothing of its speed or acceleration. */
export function fittedDuration(
  shuttle: Shuttle,
  { parameters, rounding }: ShuttleFit,
  run: ShuttleRun,
): number {
  const place = placeOf(shuttle, run);
  if (place.speed < 0 || place.acceleration < run.speeds.length) return Number.NaN;
  return shuttle.moves * moveTime(shuttle.length, place, parameters, rounding);
}

/** The reached speed at the highest commanded one, mm/s. */
function reachedSpeed({ parameters }: Pick<ShuttleFit, 'parameters'>, { speeds }: ShuttleRun): number {
  return Math.exp(parameters[speeds.length - 1] ?? Number.NaN);
}

/** The highest acceleration on the way to the reached speed at the highest commanded one, mm/s2. */
export function reachedAcceleration(
  fit: Pick<ShuttleFit, 'parameters' | 'rounding'>,
  run: ShuttleRun,
): number {
  return highestAcceleration(
    Math.exp(fit.parameters.at(-2) ?? Number.NaN),
    reachedSpeed(fit, run),
    fit.rounding,
  );
}

/** The full acceleration in mm/s2, or √(v·a/τ) where it takes longer to build up, in s, than the whole ramp to a speed takes. */
export function highestAcceleration(full: number, speed: number, rounding: number): number {
  return rounding === 0 ? full : Math.min(full, Math.sqrt((full * speed) / rounding));
}

/** The parameters of controls that do as they are told. */
function commanded({ speeds, accelerations }: ShuttleRun): number[] {
  return [...[...speeds, ...accelerations].map(Math.log), 0];
}

/**
 * Fits the times by nonlinear least squares; every time has the same error, whatever the number of moves. Null where the
 * times do not tell the parameters apart. `later` is added to all times.
 */
export function fitShuttles(
  run: ShuttleRun,
  rounding: number,
  start: readonly number[] = commanded(run),
  later = 0,
): ShuttleFit | null {
  const { shuttles, clock } = run;
  const rows = shuttles.map(({ length, moves, ...asked }) => ({ length, moves, place: placeOf(asked, run) }));
  const fit = nonlinearLeastSquares({
    model: (index, parameters) => {
      const row = rows[index];
      return row === undefined
        ? Number.NaN
        : row.moves * moveTime(row.length, row.place, parameters, rounding);
    },
    start,
    x: shuttles.map((_, index) => index),
    y: shuttles.map(({ duration }) => duration + later),
  });
  return fit.ok ? judged(fit.value, rounding, clock.resolution ** 2 / 12) : null;
}

/** Times that agree better than the clock's display can show must not be taken for surer than it. */
function judged(fit: NonlinearFit, rounding: number, leastVariance: number): ShuttleFit | null {
  const { parameters, covariance, degreesOfFreedom, residualSumOfSquares } = fit;
  const variance = Math.max(residualSumOfSquares / degreesOfFreedom, leastVariance);
  const found = residualSumOfSquares / degreesOfFreedom;
  const factor = choleskyFactor(
    covariance.map((row, index) => row.slice(0, index + 1).map((cell) => (cell * variance) / found)),
  );
  const volume = factor.reduce((sum, row, index) => sum + Math.log(row[index] ?? Number.NaN), 0);
  if (!Number.isFinite(volume)) return null;
  // Integrated over parameters and scatter: RSS^(-ν/2) times the root of the determinant of the cofactors.
  const half = (degreesOfFreedom + parameters.length) / 2;
  const evidence = volume - half * Math.log(variance);
  return { parameters, degreesOfFreedom, rounding, factor, scatter: Math.sqrt(variance), evidence };
}
