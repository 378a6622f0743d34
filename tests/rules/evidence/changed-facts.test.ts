import { daisyTrial, type Slip, testCases } from '../edited-sample.ts';

const slips: readonly Slip[] = [
  {
    slip: 'once, at the step of the scale, not also at the readings that are other ones by it',
    edits: [{ in: daisyTrial, from: 'scale: {resolution: 0.001 g', to: 'scale: {resolution: 0.0001 g' }],
    found: [`error evidence/scale-digits ${daisyTrial} | scale: {resolution: »0.0001 g}`],
  },
  {
    slip: 'once, at a deficit that nobody accepts',
    edits: [{ in: daisyTrial, from: 'acceptedDeficit: 5 %', to: 'acceptedDeficit: 45 %' }],
    found: [`error plausibility/unusual-figure ${daisyTrial} | acceptedDeficit: »45 %`],
  },
];

testCases({ slips });
