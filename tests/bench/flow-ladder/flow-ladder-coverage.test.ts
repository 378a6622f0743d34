/** @module-tag long */
import { expect, test } from 'vitest';
import { simulateLadder } from '../../../scripts/simulate-ladder.ts';
import { reduceFlowLadder } from '../../../src/bench/flow-ladder/reduce-flow-ladder.ts';

// `npm run coverage` counts over a thousand and more; this guards against a break.
test('of 60 simulated ladders at least 53 intervals hold the true limit, about 57 being expected', () => {
  const held = Array.from({ length: 60 }, (_, index) => simulateLadder(`guard ${index}`)).filter((ladder) => {
    const column = (place: 0 | 1 | 2) => ladder.rows.map((row) => row[place]);
    const reduced = reduceFlowLadder(
      {
        columns: { commandedFlow: column(0), feedLength: column(1), extrudedMass: column(2) },
        rows: ladder.rows.map((_, row) => row + 1),
      },
      {
        filamentDiameter: ladder.nominalDiameter,
        density: ladder.nominalDensity,
        acceptedDeficit: ladder.tolerance,
        massResolution: ladder.scaleResolution,
      },
    );
    if (!reduced.ok) throw new Error(JSON.stringify(reduced.error));
    const { censored, interval, value } = reduced.value.results[0]!;
    if (censored === 'above') return value <= ladder.limit;
    return (
      interval.low !== null &&
      interval.high !== null &&
      interval.low <= ladder.limit &&
      ladder.limit <= interval.high
    );
  });
  expect(held.length).toBeGreaterThanOrEqual(53);
});
