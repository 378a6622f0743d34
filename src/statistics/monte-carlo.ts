import {
  type CoverageInterval,
  shortestInterval,
  sortedDraws,
  symmetricInterval,
} from './coverage-interval.ts';
import { describe } from './describe.ts';
import { type Distribution, draw } from './distributions.ts';
import { randomSource } from './random.ts';

/** A measurement model whose inputs are independent and known by their distributions. */
export interface Propagation<Name extends string> {
  readonly inputs: Readonly<Record<Name, Distribution>>;
  /** The output quantity for one set of input values. */
  readonly model: (values: Readonly<Record<Name, number>>) => number;
  /** Number of Monte Carlo trials; JCGM 101:2008, 7.2 advises 10 000 times 1/(1 - coverage) or more. */
  readonly draws: number;
  readonly seed: string;
}

/** The distribution of an output quantity, in the unit of the model's output. */
export interface Propagated {
  readonly mean: number;
  readonly standardUncertainty: number;
  readonly sorted: Float64Array;
  symmetric(coverage: number): CoverageInterval;
  shortest(coverage: number): CoverageInterval;
}

/** Propagation of distributions through a model by the Monte Carlo method (JCGM 101:2008, clause 7). */
export function propagate<Name extends string>(propagation: Propagation<Name>): Propagated {
  const random = randomSource(propagation.seed);
  const names = Object.keys(propagation.inputs) as Name[]; // Object.keys widens to string
  const output = Float64Array.from({ length: propagation.draws }, () => {
    const values = {} as Record<Name, number>; // filled by the loop below
    for (const name of names) values[name] = draw(propagation.inputs[name], random);
    return propagation.model(values);
  });
  const sorted = sortedDraws(output);
  const { mean, standardDeviation } = describe(sorted);
  return {
    mean,
    standardUncertainty: standardDeviation,
    sorted,
    symmetric: (coverage) => symmetricInterval(sorted, coverage),
    shortest: (coverage) => shortestInterval(sorted, coverage),
  };
}
