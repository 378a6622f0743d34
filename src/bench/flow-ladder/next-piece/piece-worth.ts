import type { Candidate } from './candidates.ts';
import { type CurveCloud, meanOf, spreadOf } from './curve-cloud.ts';

/** Curves that are taken for the truth in turn, and by how many standard deviations a piece may be off. */
const truths = 40;
const deviates = [-1.2, 0, 1.2] as const;

/**
 * The part of the spread of the limit that is expected to be left after one more piece: over curves taken for the truth, what
 * the others leave open once each is weighed by how well it explains the piece (expected posterior loss; Chaloner and
 * Verdinelli, Bayesian experimental design: a review, Statistical Science 10 (1995) 273).
 */
function expectedPart({ limits }: CurveCloud, { ratios, scatter }: Candidate): number {
  const ordered = Float64Array.from(ratios).sort();
  let sum = 0;
  for (let part = 0; part < truths; part++) {
    const truth = ordered[Math.floor(((part + 0.5) * ordered.length) / truths)] ?? 0;
    for (const deviate of deviates) sum += spreadGiven(limits, ratios, truth + deviate * scatter, scatter);
  }
  return sum / (truths * deviates.length) / spreadOf(limits);
}

/** The candidate that is expected to leave least open, and the part of the spread that it leaves. */
export function bestOf(
  cloud: CurveCloud,
  candidates: readonly Candidate[],
): { readonly candidate: Candidate; readonly part: number } | null {
  const judged = candidates.map((candidate) => ({ candidate, part: expectedPart(cloud, candidate) }));
  return judged.reduce<(typeof judged)[number] | null>(
    (best, each) => (best === null || each.part < best.part ? each : best),
    null,
  );
}

/** Spread of the limits, each weighed by how well its curve explains a reading. */
function spreadGiven(limits: Float64Array, ratios: Float64Array, reading: number, scatter: number): number {
  let [weights, mean, square] = [0, 0, 0];
  for (let index = 0; index < limits.length; index++) {
    const off = ((ratios[index] ?? 0) - reading) / scatter;
    const weight = Math.exp(-0.5 * off * off);
    const limit = limits[index] ?? 0;
    weights += weight;
    mean += weight * limit;
    square += weight * limit * limit;
  }
  return Math.sqrt(Math.max(0, square / weights - (mean / weights) ** 2));
}

/**
 * The parts of the spread of the limit that pieces one after the other leave, the first at the given candidate and each
 * further one where it helps most, were limits and ratios normally distributed together (Rasmussen and Williams,
 * Gaussian Processes for Machine Learning, 2006, eq. 2.24, applied piece by piece).
 */
export function partsAhead(
  { limits }: CurveCloud,
  candidates: readonly Candidate[],
  first: Candidate,
  pieces: number,
): number[] {
  const open = covariances([limits, ...candidates.map(({ ratios }) => ratios)]);
  const whole = open[0]?.[0] ?? 0;
  const gain = (place: number) => {
    const own = open[place + 1]?.[place + 1] ?? 0;
    return (open[0]?.[place + 1] ?? 0) ** 2 / (own + (candidates[place]?.scatter ?? 0) ** 2);
  };
  const places = [...candidates.keys()];
  return Array.from({ length: pieces }, (_, piece) => {
    const place =
      piece === 0
        ? candidates.indexOf(first)
        : places.reduce((best, each) => (gain(each) > gain(best) ? each : best), 0);
    know(open, place + 1, candidates[place]?.scatter ?? 0);
    return Math.sqrt(Math.max(0, open[0]?.[0] ?? 0) / whole);
  });
}

function covariances(variables: readonly Float64Array[]): Float64Array[] {
  const centred = variables.map((values) => {
    const mean = meanOf(values);
    return values.map((value) => value - mean);
  });
  return centred.map((one) =>
    Float64Array.from(centred, (other) => {
      let sum = 0;
      for (let index = 0; index < one.length; index++) sum += (one[index] ?? 0) * (other[index] ?? 0);
      return sum / one.length;
    }),
  );
}

/** Takes out of covariances what a reading of one variable with some scatter makes known. */
function know(open: readonly Float64Array[], variable: number, scatter: number): void {
  const along = Float64Array.from(open[variable] ?? []);
  const total = (along[variable] ?? 0) + scatter * scatter;
  for (const [row, values] of open.entries()) {
    const share = (along[row] ?? 0) / total;
    for (let column = 0; column < values.length; column++) {
      values[column] = (values[column] ?? 0) - share * (along[column] ?? 0);
    }
  }
}
