import { expect, it } from 'vitest';
import { findingsAfter, hook, house, type NearMiss, type Slip } from './edited-sample.ts';

const infill = '  infill: {pathLength: 30 m, meanSegment: 20 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}';

const slips: readonly Slip[] = [
  {
    slip: 'a line narrower than its layer is high',
    edits: [
      {
        in: hook,
        from: 'meanSegment: 12 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm',
        to: 'meanSegment: 12 mm, layerHeight: 0.66 mm, lineWidth: 0.3 mm',
      },
    ],
    found: [
      `error consistency/bead-shape ${hook} | outerContour: {pathLength: 14 m, meanSegment: 12 mm, layerHeight: 0.66 mm, lineWidth: 0.3 mm}`,
    ],
  },
  {
    slip: 'segments longer than all paths',
    edits: [
      {
        in: hook,
        below: infill,
        add: '  bridge: {pathLength: 3 mm, meanSegment: 25 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}',
      },
    ],
    found: [
      `error consistency/segment-length ${hook} | bridge: {pathLength: 3 mm, meanSegment: 25 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}`,
    ],
  },
  {
    slip: 'house rules of lines that do not fill their layer',
    edits: [{ in: house, from: 'lineWidths: [110 %, 120 %]', to: 'lineWidths: [60 %, 120 %]' }],
    found: [
      `error consistency/bead-shape ${house} | lineWidths: [60 %, 120 %]`,
      `warning plausibility/unusual-figure ${house} | lineWidths: [60 %, 120 %]`,
    ],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a line as wide as its layer is high',
    edits: [
      {
        in: hook,
        from: 'meanSegment: 12 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm',
        to: 'meanSegment: 12 mm, layerHeight: 0.66 mm, lineWidth: 0.66 mm',
      },
    ],
  },
  {
    nearMiss: 'one segment',
    edits: [
      {
        in: hook,
        below: infill,
        add: '  bridge: {pathLength: 25 mm, meanSegment: 25 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}',
      },
    ],
  },
];

it.each(slips)('finds $slip', ({ edits, found }) => {
  expect(findingsAfter(edits)).toEqual(found);
});

it.each(nearMisses)('accepts $nearMiss', ({ edits }) => {
  expect(findingsAfter(edits)).toEqual([]);
});
