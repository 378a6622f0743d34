import type { JobFeature } from '../src/bench/reference-print/job-plan.ts';
import type { PrintPlan } from '../src/physics/print-time.ts';
import type { SimulatedPrint } from './simulate-print.ts';

const firstLayer = { firstLayer: 'only', layersAbove: 'never', allLayers: 'as every other' } as const;

/** A plan of the time model as the simulator takes it. */
export function simulatedPlan(plan: PrintPlan<JobFeature>): SimulatedPrint {
  const { layers, layerChange, shortestLayerTime, paths } = plan;
  return {
    layers,
    layerChange,
    shortestLayerTime,
    paths: [...paths.values()].map(({ place, ...path }) => ({ ...path, firstLayer: firstLayer[place] })),
  };
}
