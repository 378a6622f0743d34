import { sampleTexts } from '../../sample-texts.ts';
import { cloverTrial, type Edit, testCases } from '../edited-sample.ts';

const file = 'trials/2026/wren-clover-petg-235.yaml';
const [sampleRows = ''] = /(?: {4}- \[.*\]\n)+/.exec(sampleTexts().get(cloverTrial) ?? '') ?? [];

/** Masses of 400 mm pieces at flows in mm³/s, as a sound ladder of the sample's hot end gives them. */
const pieces = {
  8: '1.231',
  11: '1.226',
  14: '1.229',
  17: '1.217',
  20: '1.169',
  23: '1.082',
  26: '0.981',
  29: '0.874',
} as const;

type Flow = keyof typeof pieces;

/** A ladder of its own, at another temperature, whose pieces were run in this order. */
function ladderOf(flows: readonly Flow[]): Edit {
  const rows = flows.map((flow) => `    - [${flow}, 400, ${pieces[flow]}]\n`).join('');
  return {
    copy: cloverTrial,
    to: file,
    edits: [
      ['id: wren-clover-petg-245', 'id: wren-clover-petg-235'],
      ['nozzleTemperature: 245 Cel', 'nozzleTemperature: 235 Cel'],
      [sampleRows, rows],
      ['commandedFlow: 28 mm3/s', 'commandedFlow: 32 mm3/s'],
    ],
  };
}

testCases({
  slips: [
    {
      slip: 'a piece that was fed after a higher one',
      edits: [ladderOf([8, 11, 17, 14, 20, 23, 26, 29])],
      found: [`warning evidence/unordered-steps ${file} | - »[14, 400, 1.229]`],
    },
    {
      slip: 'steps that were filled in after the highest one',
      edits: [ladderOf([8, 14, 20, 26, 29, 11, 17, 23])],
      found: [`warning evidence/unordered-steps ${file} | - »[11, 400, 1.226]`],
    },
    {
      slip: 'a ladder that goes down',
      edits: [ladderOf([29, 26, 23, 20, 17, 14, 11, 8])],
      found: [`warning evidence/unordered-steps ${file} | - »[26, 400, 0.981]`],
    },
  ],
  nearMisses: [
    { nearMiss: 'a ladder that goes up', edits: [ladderOf([8, 11, 14, 17, 20, 23, 26, 29])] },
    {
      nearMiss: 'six pieces in random order, two of them below the one before',
      edits: [ladderOf([17, 11, 23, 8, 20, 26])],
    },
    {
      nearMiss: 'eight pieces in random order, two of them below the one before',
      edits: [ladderOf([14, 20, 26, 8, 11, 29, 17, 23])],
    },
  ],
});
