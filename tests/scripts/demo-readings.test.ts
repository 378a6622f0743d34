import { describe, expect, test } from 'vitest';
import { demoRows, demoSeries } from '../../scripts/demo-method-readings.ts';
import { demoLadders, demoReadings } from '../../scripts/demo-readings.ts';
import { loadFolders } from '../../src/host/load-registry.ts';

const { registry } = loadFolders(['profiles']);
const drawn = [
  ...demoLadders.map((ladder) => [ladder.trial, demoReadings(ladder)] as const),
  ...demoSeries.map((series) => [series.trial, demoRows(series)] as const),
];

/** The readings of a trial as numbers, in the units in which it holds them. */
function held(id: string): number[][] {
  const trial = registry.trial.get(id);
  if (trial === undefined) throw new Error(`${id} is not in the demo registry`);
  if (trial.data.observations.rows !== undefined) return trial.data.observations.rows.map((row) => [...row]);
  if (!trial.attachment?.ok) throw new Error(`${id} has no readings`);
  const [, ...lines] = trial.attachment.source.text.trim().split('\n');
  return lines.map((line) => line.split(',').map(Number));
}

test('the demo registry has at least 25 trials, of many methods', () => {
  expect(registry.trial.size).toBeGreaterThanOrEqual(25);
  const methods = new Set([...registry.trial.values()].map(({ data }) => data.method));
  expect([...methods]).toEqual(
    expect.arrayContaining([
      ...['flowLadder', 'diameterSurvey', 'temperatureSweep', 'contourLadder', 'layerTime'],
      ...['dryingCurve', 'soundLevel'],
    ]),
  );
});

describe.each(drawn)('%s', (id, rows) => {
  test('holds the readings that the script draws, and says that they are simulated', () => {
    expect(held(id)).toEqual(rows.map((row) => row.map(Number)));
    expect(registry.trial.get(id)?.data.origin).toBe('simulated');
  });
});
