import { isBeadFeasible } from '../../physics/bead.ts';
import type { Job, Policy } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'profile',
  severity: 'error',
  statement: 'A line is at least as wide as its layer is high.',
  rationale:
    'A narrower line would be a ribbon standing on edge, and its cross-section could not be calculated.',
  source: 'Plane geometry of a rounded rectangle; common practice, no source.',
  formula: 'w >= h, w line width, h layer height',
  example: alike(
    'job',
    { bad: '0.26 mm', good: '0.66 mm' },
    (value) => `
features:
  infill: {pathLength: 30 m, meanSegment: 20 mm, layerHeight: 0.3 mm, lineWidth: ${value}}`,
  ),
  *check(profile) {
    if (profile.kind === 'job') yield* ofJob(profile.data);
    if (profile.kind === 'policy') yield* ofPolicy(profile.data);
  },
};

function* ofJob({ features }: Job): Generator<Hit> {
  for (const [feature, path] of Object.entries(features)) {
    if (!('layerHeight' in path) || path.layerHeight <= 0 || isBeadFeasible(path.layerHeight, path.lineWidth))
      continue;
    yield {
      path: ['features', feature, 'lineWidth'],
      part: 'value',
      message: `The line of ${shown(path.lineWidth, 'length')} is narrower than its layer of ${shown(path.layerHeight, 'length')} is high`,
      found: shown(path.lineWidth, 'length'),
      allowed: `from ${shown(path.layerHeight, 'length')}`,
      help: 'Check both; they may be swapped.',
    };
  }
}

function* ofPolicy({ layerHeights, lineWidths }: Policy): Generator<Hit> {
  const tallest = Math.max(...layerHeights);
  for (const [index, width] of lineWidths.entries()) {
    if (tallest <= 0 || isBeadFeasible(tallest, width)) continue;
    yield {
      path: ['lineWidths', index],
      part: 'value',
      message: `A line of ${shown(width, 'ratio')} of the nozzle is narrower than a layer of ${shown(tallest, 'ratio')} is high`,
      found: shown(width, 'ratio'),
      allowed: `from ${shown(tallest, 'ratio')}`,
      help: 'Widen the line or drop the layer height.',
    };
  }
}
