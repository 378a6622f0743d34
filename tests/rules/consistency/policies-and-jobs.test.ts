import { type Edit, hook, house, type NearMiss, type Slip, testCases, wren } from '../edited-sample.ts';

const infill = '  infill: {pathLength: 30 m, meanSegment: 20 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}';

const fanOf = (features: string): Edit => ({
  in: house,
  from: 'layerPath:',
  to: `fan: {${features}}\nlayerPath:`,
});

const slips: readonly Slip[] = [
  {
    slip: 'a bed limit that lost its decimal point',
    edits: [{ in: wren, from: 'value: 100 Cel', to: 'value: 1000 Cel' }],
    found: [
      `error plausibility/impossible-figure ${wren} | - {value: »1000 Cel, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
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
      `error consistency/bead-shape ${hook} | outerContour: {pathLength: 14 m, meanSegment: 12 mm, layerHeight: 0.66 mm, lineWidth: »0.3 mm}`,
    ],
  },
  {
    slip: 'layers that no nozzle can lay',
    edits: [
      {
        in: hook,
        from: 'layerHeight: 0.3 mm, lineWidth: 0.66 mm}\n  infill: {pathLength: 30 m, meanSegment: 20 mm, layerHeight: 0.3 mm',
        to: 'layerHeight: 0.63 mm, lineWidth: 0.66 mm}\n  infill: {pathLength: 30 m, meanSegment: 20 mm, layerHeight: 0.63 mm',
      },
    ],
    found: [
      `warning consistency/beads-apart ${hook} | outerContour: {pathLength: 14 m, meanSegment: 12 mm, layerHeight: »0.63 mm, lineWidth: 0.66 mm}`,
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
      `error consistency/segment-length ${hook} | bridge: {pathLength: 3 mm, meanSegment: »25 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}`,
    ],
  },
  {
    slip: 'a bridge with less air than the infill below it',
    edits: [fanOf('outerContour: 80 %, innerContour: 60 %, infill: 50 %, bridge: 10 %, overhang: 100 %')],
    found: [
      `warning consistency/fractions-apart ${house} | fan: {outerContour: 80 %, innerContour: 60 %, infill: 50 %, bridge: »10 %, overhang: 100 %}`,
    ],
  },
  {
    slip: 'a fan for contours that lost a digit',
    edits: [fanOf('outerContour: 8 %, innerContour: 60 %, topSurface: 80 %, bridge: 100 %')],
    found: [
      `warning consistency/fractions-apart ${house} | fan: {outerContour: »8 %, innerContour: 60 %, topSurface: 80 %, bridge: 100 %}`,
    ],
  },
  {
    slip: 'house rules of lines that do not fill their layer',
    edits: [{ in: house, from: 'lineWidths: [110 %, 120 %]', to: 'lineWidths: [60 %, 120 %]' }],
    found: [`error consistency/bead-shape ${house} | lineWidths: [»60 %, 120 %]`],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a line as wide as its layer is high',
    edits: [
      {
        in: hook,
        from: 'meanSegment: 12 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm',
        to: 'meanSegment: 12 mm, layerHeight: 0.5 mm, lineWidth: 0.5 mm',
      },
    ],
  },
  { nearMiss: 'the same fan for all', edits: [fanOf('infill: 30 %, bridge: 30 %, overhang: 30 %')] },
  {
    nearMiss: 'little air inside, and none at the top',
    edits: [fanOf('outerContour: 100 %, innerContour: 20 %, infill: 10 %, topSurface: 0 %')],
  },
  { nearMiss: 'a fan for bridges only', edits: [fanOf('infill: 0 %, bridge: 40 %')] },
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

testCases({ slips, nearMisses });
