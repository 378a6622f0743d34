import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jobAtLayerHeight, layerHeightOf } from '../../../src/decisions/compare/job-at-layer-height.ts';
import { beadArea } from '../../../src/physics/bead.ts';
import type { Job } from '../../../src/registry/generated/documents.ts';
import { demo } from './demo-comparison.ts';

const rack = demo.job.get('mask-rack')!.data;
const at = (height: number, job: Pick<Job, 'layers' | 'features'> = rack) => {
  const changed = jobAtLayerHeight(job, height);
  if (!changed.ok) throw new Error(changed.error.message);
  return changed.value;
};
const volumeOf = ({ features }: Pick<Job, 'features'>) =>
  Object.values(features).reduce(
    (sum, path) =>
      'layerHeight' in path ? sum + path.pathLength * beadArea(path.layerHeight, path.lineWidth) : sum,
    0,
  );

describe('a job in layers of another height', () => {
  it('has as many more layers above the first as they are lower, with the paths that a layer had', () => {
    const half = at(0.1);
    // 214 layers of 0.2 mm lie above the first; the part stays 43 mm high.
    expect(half.layers).toBe(1 + 428);
    expect(half.features.infill).toEqual({ ...rack.features.infill, layerHeight: 0.1, pathLength: 302_000 });
    expect(half.features.overhang?.pathLength).toBe(2 * 2000);
    expect(half.features.travel?.pathLength).toBeCloseTo((47_000 * 429) / 215, 6);
  });

  it('keeps its first layer, and the length of what is laid once', () => {
    const { features } = at(0.3);
    expect(features.firstLayer).toEqual(rack.features.firstLayer);
    expect(features.topSurface).toEqual({ ...rack.features.topSurface, layerHeight: 0.3 });
  });

  it('is the job itself at its own height', () => {
    expect(at(0.2)).toBe(rack);
    expect(layerHeightOf(rack)).toBe(0.2);
  });

  it('keeps the volume of the part nearly, and its height within half a layer', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.08, max: 0.32, noNaN: true }), (height) => {
        const job = at(height);
        expect(Math.abs(volumeOf(job) / volumeOf(rack) - 1)).toBeLessThan(0.12);
        expect(Math.abs((job.layers - 1) * height - 214 * 0.2)).toBeLessThanOrEqual(height / 2 + 1e-9);
      }),
    );
  });

  it('keeps the ratio of heights that differ', () => {
    const infill = { ...rack.features.infill!, layerHeight: 0.4 };
    const { features } = at(0.1, { ...rack, features: { ...rack.features, infill } });
    expect([features.innerContour?.layerHeight, features.infill?.layerHeight]).toEqual([0.1, 0.2]);
  });

  it('is refused where a layer would be higher than a line is wide, or where there is none above the first', () => {
    expect(jobAtLayerHeight(rack, 0.5)).toMatchObject({
      error: {
        code: 'layerTooHigh',
        message: 'Layers of 0.5 mm are higher than the lines of the job are wide, 0.45 mm',
      },
    });
    const flat = { layers: 1, features: { firstLayer: rack.features.firstLayer! } };
    expect(jobAtLayerHeight(flat, 0.1)).toMatchObject({ error: { code: 'noLayerHeight' } });
  });
});
