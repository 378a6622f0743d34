import { measuredFlows, siblingsOf } from './measured-flows.ts';
import type { ProfileRule } from './rule.ts';
import { shown, shownNumber } from './wording.ts';

/** Grades and temperatures of a family differ by less (common practice, no source). */
const largestFactor = 2.5;

export const aboveSiblings: ProfileRule = {
  judges: 'profile',
  code: 'evidence/above-siblings',
  severity: 'warning',
  statement: 'A measured flow is not far above the others of the same machine, nozzle and polymer family.',
  rationale:
    'The hot end sets the limit more than the grade: one that is far above is a slip or another setup.',
  source:
    'Mackay et al., J. Rheology 61 (2017) 229-236: feed limits of all polymers fall on one curve; the factor is common practice, no source.',
  formula: `Q > ${largestFactor} median(Q of the others)`,
  example: {
    kind: 'filament',
    bad: `
meltFlow:
  - value: 6 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel}
  - value: 19 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel}`,
    good: `
meltFlow:
  - value: 16 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel}
  - value: 19 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel}`,
  },
  *check(profile, { registry }) {
    if (profile.kind !== 'filament') return;
    for (const flow of measuredFlows(profile)) {
      const others = siblingsOf(flow, registry).map(({ value }) => value);
      const middle = median(others);
      if (middle === null || flow.value <= largestFactor * middle) continue;
      yield {
        path: flow.path,
        part: 'value',
        message: `${shown(flow.value, 'volumeFlow')} is ${shownNumber(Number((flow.value / middle).toPrecision(2)))} times what other trials of ${flow.polymer} on ${flow.hotEnd} give (${shown(middle, 'volumeFlow')})`,
        found: shown(flow.value, 'volumeFlow'),
        allowed: `up to ${shown(largestFactor * middle, 'volumeFlow')}`,
        help: 'Check digits, machine and nozzle; if it is true, repeat the ladder and say what was different.',
      };
    }
  },
};

function median(values: readonly number[]): number | null {
  const sorted = values.toSorted((a, b) => a - b);
  const [lower, upper] = [sorted[Math.ceil(sorted.length / 2) - 1], sorted[Math.floor(sorted.length / 2)]];
  return lower === undefined || upper === undefined ? null : (lower + upper) / 2;
}
