import { expect, it } from 'vitest';
import { cloverTrial, findingsAfter } from '../edited-sample.ts';

const again = 'trials/2026/wren-clover-petg-245-again.yaml';
const copy = (edits: readonly (readonly [string, string])[]) =>
  findingsAfter([
    {
      copy: cloverTrial,
      to: again,
      edits: [['id: wren-clover-petg-245', 'id: wren-clover-petg-245-again'], ...edits],
    },
  ]).filter((line) => line.includes(again) && !line.includes('identity/copied-readings'));
const inCubicCentimetres = [
  ['commandedFlow: mm3/s', 'commandedFlow: cm3/h'],
  ['commandedFlow: 28 mm3/s', 'commandedFlow: 28 cm3/h'],
] as const;

it('finds a melt zone that has nothing left to do at the limit', () => {
  expect(copy([...inCubicCentimetres, ['nozzle: hs-0.6', 'nozzle: hs-0.4']])).toEqual([
    `warning plausibility/idle-melt-zone ${again} | »observations:`,
  ]);
});

it('of two trials alone, it does not say that the lower one is too low', () => {
  const codes = copy(inCubicCentimetres).map((line) => line.split(' ')[1]);
  expect(codes).not.toContain('evidence/below-similar-trials');
});

it('a finer nozzle, through which the force sets the limit, may be slow', () => {
  const edits = [['- {id: hs-0.4, diameter: 0.4 mm', '- {id: hs-0.4, diameter: 0.25 mm']] as const;
  expect(
    findingsAfter([
      { in: 'machines/plumstead/wren.yaml', from: edits[0][0], to: edits[0][1] },
      {
        copy: cloverTrial,
        to: again,
        edits: [
          ['id: wren-clover-petg-245', 'id: wren-clover-petg-245-again'],
          ...inCubicCentimetres,
          ['nozzle: hs-0.6', 'nozzle: hs-0.4'],
        ],
      },
    ]).filter((line) => line.includes('idle-melt-zone')),
  ).toEqual([]);
});
