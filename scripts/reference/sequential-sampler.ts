import { choleskyFactor } from '../../src/statistics/cholesky.ts';
import type { RandomSource } from '../../src/statistics/random.ts';

/** One candidate model: a prior that can be drawn from and a likelihood, both over the same coordinates. */
export interface CandidateModel {
  drawPrior(random: RandomSource): number[];
  /** Logarithm of the prior density, -Infinity where the model is undefined. */
  logPrior(point: readonly number[]): number;
  logLikelihood(point: readonly number[]): number;
}

/** A draw from the joint posterior of model and coordinates. */
interface PosteriorDraw {
  /** Index of the candidate model. */
  readonly model: number;
  readonly point: readonly number[];
}

interface Particle {
  readonly model: number;
  readonly point: readonly number[];
  readonly logPrior: number;
  readonly logLikelihood: number;
}

/** How many draws to carry along and how hard to mix them. */
export interface SamplerEffort {
  /** Draws from the prior to begin with; more than particles, since most of them land where nothing was read. */
  readonly startingDraws: number;
  readonly particles: number;
  /** Metropolis moves of every particle after each tempering stage. */
  readonly movesPerStage: number;
  /** Further rounds of moves at the posterior, each of which contributes one set of draws. */
  readonly finalRounds: number;
}

/**
 * Draws from the posterior over several candidate models, equally probable beforehand, by tempering the likelihood
 * from 0 to 1 in adaptive stages with systematic resampling and Metropolis moves
 * (Del Moral, Doucet, Jasra, "Sequential Monte Carlo samplers", J. R. Statist. Soc. B 68 (2006) 411-436, section 3.3).
 */
export function samplePosterior(
  models: readonly CandidateModel[],
  effort: SamplerEffort,
  random: RandomSource,
): PosteriorDraw[] {
  let particles = Array.from({ length: effort.startingDraws }, (_, index) => {
    const model = index % models.length;
    return particleAt(models, model, models[model]?.drawPrior(random) ?? []);
  });
  let temper = 0;
  let stride = 1;
  const mix = (rounds: number) => {
    for (let round = 0; round < rounds; round++) {
      const moved = moveAll(models, particles, temper, stride, random);
      particles = moved.particles;
      stride *= Math.min(1.5, Math.max(0.5, moved.acceptance / 0.3));
    }
  };
  while (temper < 1) {
    const next = nextTemper(particles, temper, effort.particles / 2);
    particles = resample(particles, next - temper, effort.particles, random);
    temper = next;
    mix(effort.movesPerStage);
  }
  const draws: PosteriorDraw[] = [];
  for (let round = 0; round < effort.finalRounds; round++) {
    mix(effort.movesPerStage);
    draws.push(...particles);
  }
  return draws;
}

function particleAt(models: readonly CandidateModel[], model: number, point: readonly number[]): Particle {
  const candidate = models[model];
  const logPrior = candidate?.logPrior(point) ?? Number.NEGATIVE_INFINITY;
  const logLikelihood =
    candidate !== undefined && logPrior > Number.NEGATIVE_INFINITY
      ? candidate.logLikelihood(point)
      : Number.NEGATIVE_INFINITY;
  return { model, point, logPrior, logLikelihood };
}

/** The largest next exponent that leaves so many particles effective. */
function nextTemper(particles: readonly Particle[], temper: number, effective: number): number {
  if (effectiveCount(particles, 1 - temper) >= effective) return 1;
  let low = 0;
  let high = 1 - temper;
  for (let step = 0; step < 40; step++) {
    const middle = (low + high) / 2;
    if (effectiveCount(particles, middle) < effective) high = middle;
    else low = middle;
  }
  return temper + high;
}

function effectiveCount(particles: readonly Particle[], exponent: number): number {
  const weights = incrementalWeights(particles, exponent);
  let sum = 0;
  let squares = 0;
  for (const weight of weights) {
    sum += weight;
    squares += weight * weight;
  }
  return (sum * sum) / squares;
}

function incrementalWeights(particles: readonly Particle[], exponent: number): number[] {
  let best = Number.NEGATIVE_INFINITY;
  for (const particle of particles) best = Math.max(best, particle.logLikelihood);
  return particles.map((particle) => Math.exp(exponent * (particle.logLikelihood - best)));
}

/** Systematic resampling: every particle is kept in proportion to its weight within one. */
function resample(
  particles: readonly Particle[],
  exponent: number,
  count: number,
  random: RandomSource,
): Particle[] {
  const weights = incrementalWeights(particles, exponent);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const spacing = total / count;
  let threshold = spacing * random.uniform();
  let reached = 0;
  const kept: Particle[] = [];
  for (const [index, particle] of particles.entries()) {
    reached += weights[index] ?? 0;
    while (kept.length < count && threshold < reached) {
      kept.push(particle);
      threshold += spacing;
    }
  }
  return kept;
}

function moveAll(
  models: readonly CandidateModel[],
  particles: readonly Particle[],
  temper: number,
  stride: number,
  random: RandomSource,
): { readonly particles: Particle[]; readonly acceptance: number } {
  const shapes = models.map((_, model) => spreadOf(particles.filter((particle) => particle.model === model)));
  let accepted = 0;
  const moved = particles.map((particle) => {
    const shape = shapes[particle.model] ?? [];
    const scale = (stride * 2.38) / Math.sqrt(particle.point.length);
    const proposal = particleAt(models, particle.model, step(particle.point, shape, scale, random));
    const gain =
      proposal.logPrior - particle.logPrior + temper * (proposal.logLikelihood - particle.logLikelihood);
    if (Math.log(1 - random.uniform()) >= gain) return particle;
    accepted += 1;
    return proposal;
  });
  return { particles: moved, acceptance: accepted / particles.length };
}

function step(
  point: readonly number[],
  shape: readonly (readonly number[])[],
  scale: number,
  random: RandomSource,
): number[] {
  const deviates = point.map(() => random.normal());
  return point.map((coordinate, row) => {
    let shift = 0;
    for (let column = 0; column <= row; column++) {
      shift += (shape[row]?.[column] ?? 0) * (deviates[column] ?? 0);
    }
    return coordinate + scale * shift;
  });
}

/** Lower Cholesky factor of the particles' covariance. */
function spreadOf(particles: readonly Particle[]): number[][] {
  const points = particles.map((particle) => particle.point);
  const size = points[0]?.length ?? 0;
  const mean = Array.from({ length: size }, (_, row) => average(points, (point) => point[row] ?? 0));
  const away = (point: readonly number[], row: number) => (point[row] ?? 0) - (mean[row] ?? 0);
  return choleskyFactor(
    Array.from({ length: size }, (_, row) =>
      Array.from({ length: row + 1 }, (_, column) =>
        average(points, (point) => away(point, row) * away(point, column)),
      ),
    ),
  );
}

function average(points: readonly (readonly number[])[], read: (point: readonly number[]) => number): number {
  let sum = 0;
  for (const point of points) sum += read(point);
  return sum / points.length;
}
