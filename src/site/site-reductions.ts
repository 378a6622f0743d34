import { reduceTrial, trialResults } from '../bench/reduce-trial.ts';
import type { ReduceById } from '../bench/reducing-once.ts';
import type { Reduction } from '../bench/reduction.ts';
import type { Registry } from '../registry/registry.ts';
import { success } from '../result.ts';
import type { ReducedCatalogue } from './catalogue.ts';

/** Reductions with their curves are large: so many are kept, since the pages of a trial and of its pairings are made one after the other. */
const mostKept = 48;

/** The reductions that pages show and tables rest on. */
interface SiteReductions {
  /** A whole reduction; its curve is worked out once. */
  readonly reductionOf: ReducedCatalogue['reductionOf'];
  /** What it finds, which is kept of every trial. */
  readonly resultsOf: ReduceById;
}

export function siteReductions(registry: Registry): SiteReductions {
  const results = new Map<string, ReturnType<ReduceById>>();
  const recent = new Map<string, ReturnType<ReducedCatalogue['reductionOf']>>();
  return {
    reductionOf: (trial) => {
      const reduced = recent.get(trial) ?? reduceWhole(registry, trial);
      recent.delete(trial);
      recent.set(trial, reduced);
      const [oldest = trial] = recent.keys();
      if (recent.size > mostKept) recent.delete(oldest);
      if (reduced.ok) {
        const { method, results: found, warnings } = reduced.value;
        results.set(trial, success({ method, results: found, warnings }));
      }
      return reduced;
    },
    resultsOf: (trial) => {
      const found = results.get(trial) ?? trialResults(registry, trial);
      results.set(trial, found);
      return found;
    },
  };
}

function reduceWhole(registry: Registry, trial: string): ReturnType<ReducedCatalogue['reductionOf']> {
  const reduced = reduceTrial(registry, trial);
  return reduced.ok ? success(withCurveOnce(reduced.value)) : reduced;
}

function withCurveOnce(reduction: Reduction): Reduction {
  let curve: Reduction['curve'] | undefined;
  return {
    ...withoutCurve(reduction),
    get curve() {
      if (curve === undefined) curve = reduction.curve;
      return curve;
    },
  };
}

function withoutCurve({ method, results, warnings }: Reduction): Omit<Reduction, 'curve'> {
  return { method, results, warnings };
}
