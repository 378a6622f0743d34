import { describe, expect, it } from 'vitest';
import { compared, demo, lantern, steeple } from './demo-comparison.ts';

const estimateOf = (...given: Parameters<typeof compared>) => compared(...given).estimates[0]!;

describe('a share of the melt flow limit', () => {
  it('slows what the melt limits by as much, and nothing else', () => {
    const of = (meltShare: number) =>
      new Map(estimateOf({ meltShare }).features.map((path) => [path.feature, path.commandedSpeed]));
    const [whole, half] = [of(1), of(0.5)];
    // 344 mm/s of 344.99 are commanded, in whole mm/s.
    expect(half.get('infill')).toBe(172);
    for (const feature of ['firstLayer', 'travel'] as const)
      expect(half.get(feature)).toBe(whole.get(feature));
  });

  it('is all that the house rules allow unless asked otherwise', () => {
    expect(compared({ meltShare: 1 })).toEqual(compared({}));
  });

  it('gives the times that an estimate says of smaller shares', () => {
    const { lessMelt } = estimateOf({});
    expect(lessMelt.map(({ share }) => share)).toEqual([0.75, 0.5, 0.25]);
    for (const { share, time } of lessMelt) expect(estimateOf({ meltShare: share }).time).toBe(time);
    expect(estimateOf({ meltShare: 0.5 }).lessMelt.map(({ share }) => share)).toEqual([0.25]);
  });
});

describe('the time over the interval of the melt flow limit', () => {
  it('is that with the limit at either end', () => {
    const { time, timeInterval } = estimateOf({ pairings: [lantern] });
    expect(timeInterval!.low).toBeLessThan(time);
    expect(timeInterval!.high).toBeGreaterThan(time);
    const [limit] = demo.filament
      .get(lantern.filament)!
      .data.meltFlow!.filter(({ at }) => at?.machine === lantern.machine && at.nozzle === lantern.nozzle);
    // A share of the limit slows as a lower limit does.
    expect(estimateOf({ meltShare: limit!.interval!.low / limit!.value }).time).toBeCloseTo(
      timeInterval!.high,
      9,
    );
  });

  it('is the time itself where the melt limits nothing', () => {
    const { features } = demo.job.get('mask-rack')!.data;
    const profile = demo.job.get('mask-rack')!;
    const data = { ...profile.data, features: { firstLayer: features.firstLayer! } };
    const registry = { ...demo, job: new Map(demo.job).set('mask-rack', { ...profile, data }) };
    const { time, timeInterval } = estimateOf({ pairings: [steeple] }, registry);
    expect(timeInterval).toEqual({ low: time, high: time });
  });

  it('is not known where a limit has none', () => {
    const profile = demo.filament.get(lantern.filament)!;
    const meltFlow = profile.data.meltFlow!.map(({ interval: _, ...rest }) => rest);
    const changed = { ...profile, data: { ...profile.data, meltFlow } };
    const registry = { ...demo, filament: new Map(demo.filament).set(lantern.filament, changed) };
    expect(estimateOf({ pairings: [lantern] }, registry).timeInterval).toBeNull();
  });
});
