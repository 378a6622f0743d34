import { describe, expect, it } from 'vitest';
import type { ReducedResult } from '../../src/bench/reduction.ts';
import { sorrelLadder, sorrelWith } from '../rules/second-profiles.ts';
import { hitsIn, limitOf, sorrelMeasured } from './edited-registry.ts';

const trial = 'wren-sorrel-pla-230';

/** What is found against a property of Sorrel PLA that a method has measured, where its trial gives some results. */
function against(
  method: Parameters<typeof sorrelMeasured>[0],
  statement: string,
  results: readonly ReducedResult[] | null,
) {
  return hitsIn(
    'evidence/unsupported',
    sorrelMeasured(method, `${statement.replace('measured', `basis: measured, evidence: ${trial}`)}\n`),
    results,
  );
}

const flow = limitOf('meltFlow', 'volumeFlow', 30, [29, 31]);
const open = { ...flow, value: 28, interval: { low: null, high: null, coverage: 0.95 } } as const;

/** The words of the only fault that is found. */
function wordsOf([hit, ...more]: ReturnType<typeof against>) {
  expect(more).toEqual([]);
  const { message, found, allowed, help, path, part } = hit!;
  expect(part).toBe('value');
  return { message, found, allowed, help, at: path.join('/') };
}

describe('a limit that is safe below what its trial gives', () => {
  const stated = (value: string, results: readonly ReducedResult[] = [flow]) =>
    against('flowLadder', `meltFlow:\n  - {value: ${value}, measured}`, results);

  it('may lie anywhere below, and above by what rounding to three digits makes', () => {
    expect(stated('30.3 mm3/s')).toEqual([]);
    expect(stated('1 mm3/s')).toEqual([]);
    expect(stated('30.31 mm3/s')).toHaveLength(1);
  });

  it('above it is told with what the readings give, and what to write', () => {
    expect(wordsOf(stated('31 mm3/s'))).toEqual({
      at: 'meltFlow/0/value',
      message: `The limit 31 mm3/s is above what the trial "${trial}" supports: its readings give 30 mm3/s (95 % interval 29..31 mm3/s)`,
      found: '31 mm3/s',
      allowed: 'up to 30 mm3/s',
      help: 'Compare the readings and this value with the bench sheet; where the readings are right, write `30 mm3/s` or less.',
    });
  });

  it('is told what the readings give with three digits', () => {
    const precise = limitOf('meltFlow', 'volumeFlow', 30.0412, [28.9612, 31.0388]);
    expect(stated('31 mm3/s', [precise])[0]?.message).toMatch(
      /give 30 mm3\/s \(95 % interval 29\.\.31 mm3\/s\)$/,
    );
  });

  it('is a lower bound where the ladder ended before it', () => {
    const [hit] = stated('29 mm3/s', [{ ...open, censored: 'above' }]);
    expect(hit?.message).toBe(
      `The limit 29 mm3/s is above what the trial "${trial}" supports: its readings give 28 mm3/s, a lower bound`,
    );
  });

  it('has no support where even the first step is too much', () => {
    expect(wordsOf(stated('5 mm3/s', [{ ...open, censored: 'below' }]))).toEqual({
      at: 'meltFlow/0/evidence',
      message: `In the trial "${trial}" the deficit is exceeded at the first step: it supports no meltFlow`,
      help: 'Run a ladder that starts lower, or drop this statement.',
    });
  });

  it('has no support in readings that cannot be reduced, whose trial says why', () => {
    const [hit, ...more] = against('flowLadder', 'meltFlow:\n  - {value: 20 mm3/s, measured}', null);
    expect(more).toEqual([]);
    expect(hit).toEqual({
      path: ['meltFlow', 0, 'evidence'],
      part: 'value',
      message: `The trial "${trial}" cannot be reduced, so it supports no limit`,
      help: 'Fix the trial first; its own findings say what is wrong.',
      blames: [{ of: { kind: 'trial', id: trial }, path: ['observations'] }],
    });
  });

  it('has no support where the readings give another result', () => {
    expect(wordsOf(stated('5 mm3/s', [{ ...flow, quantity: 'startDeficit' }]))).toEqual({
      at: 'meltFlow/0/evidence',
      message: `The flowLadder "${trial}" gives no meltFlow here`,
      help: 'Name a trial that finds it, under the same conditions.',
    });
  });
});

describe('a time that is safe above what its trial gives', () => {
  const layerTime = limitOf('shortestLayerTime', 'time', 8, [7, 9]);
  const stated = (value: string) =>
    against('layerTime', `shortestLayerTime:\n  - {value: ${value}, measured}`, [layerTime]);

  it('may lie anywhere above, and below by what rounding makes', () => {
    expect(stated('7.92 s')).toEqual([]);
    expect(stated('80 s')).toEqual([]);
    expect(stated('7.91 s')).toHaveLength(1);
  });

  it('below it is told from where on it is safe', () => {
    expect(wordsOf(stated('6 s'))).toMatchObject({
      message: `The limit 6 s is below what the trial "${trial}" supports: its readings give 8 s (95 % interval 7..9 s)`,
      allowed: 'from 8 s',
      help: expect.stringMatching(/write `8 s` or more\.$/),
    });
  });

  it('is an upper bound where the readings began beyond it', () => {
    const bound = { ...open, quantity: 'shortestLayerTime', dimension: 'time', censored: 'below' } as const;
    const [hit] = against('layerTime', 'shortestLayerTime:\n  - {value: 20 s, measured}', [bound]);
    expect(hit?.message).toMatch(/its readings give 28 s, an upper bound$/);
  });
});

describe('a setting that is safe only within its interval', () => {
  const speed = limitOf('retractionSpeed', 'speed', 40, [35, 50]);
  const stated = (value: string, result: ReducedResult = speed) =>
    against('settingLadder', `retractionSpeed:\n  - {value: ${value}, measured}`, [result]);

  it('may lie within, and beyond either end by what rounding makes', () => {
    for (const value of ['34.6 mm/s', '40 mm/s', '50.4 mm/s']) expect(stated(value), value).toEqual([]);
    for (const value of ['34.5 mm/s', '50.5 mm/s']) expect(stated(value), value).toHaveLength(1);
  });

  it('outside of it is told the interval', () => {
    expect(wordsOf(stated('60 mm/s'))).toMatchObject({
      message: `The value 60 mm/s is outside of what the trial "${trial}" supports: its readings give 40 mm/s (95 % interval 35..50 mm/s)`,
      allowed: '35..50 mm/s',
      help: expect.stringMatching(/write `40 mm\/s`\.$/),
    });
  });

  it.each([
    [null, null],
    [35, null],
    [null, 50],
  ])('has no support in an interval of %s and %s', (low, high) => {
    expect(wordsOf(stated('40 mm/s', limitOf('retractionSpeed', 'speed', 40, [low, high])))).toMatchObject({
      message: expect.stringMatching(/its readings give 40 mm\/s, a bound$/),
      allowed: 'near 40 mm/s',
    });
  });
});

describe('a window of temperatures', () => {
  const results = [
    limitOf('lowestNozzleTemperature', 'temperature', 200, [197, 203]),
    limitOf('highestNozzleTemperature', 'temperature', 240, [235, 245]),
  ];
  const stated = (value: string) =>
    against('temperatureSweep', `nozzleTemperature:\n  - {value: ${value}, measured}`, results).map(
      ({ message }) => message,
    );

  it('is judged by both of its ends', () => {
    expect(stated('200..240 Cel')).toEqual([]);
    expect(stated('205..230 Cel')).toEqual([]);
    expect(stated('180..240 Cel')).toEqual([
      expect.stringMatching(/^The limit 180 Cel is below what the trial .* give 200 Cel /),
    ]);
    expect(stated('180..260 Cel')).toEqual([
      expect.stringMatching(/^The limit 180 Cel is below/),
      expect.stringMatching(/^The limit 260 Cel is above what the trial .* give 240 Cel /),
    ]);
  });
});

describe('a speed that was found at several accelerations', () => {
  const at = (acceleration: number, value: number) => ({
    ...limitOf('contourSpeed', 'speed', value, [value - 10, value + 10]),
    at: { acceleration },
  });
  const stated = (statement: string) =>
    against('contourLadder', `contourSpeed:\n  - ${statement}`, [at(3000, 100), at(9000, 60)]);

  it('is judged by that at its own acceleration', () => {
    expect(stated('{value: 90 mm/s, measured, at: {acceleration: 3000 mm/s2}}')).toEqual([]);
    expect(stated('{value: 90 mm/s, measured, at: {acceleration: 9000 mm/s2}}')).toHaveLength(1);
  });

  it('has no support at another one, or at none', () => {
    expect(wordsOf(stated('{value: 50 mm/s, measured, at: {acceleration: 5000 mm/s2}}'))).toEqual({
      at: 'contourSpeed/0/evidence',
      message: `The contourLadder "${trial}" gives no contourSpeed at the acceleration of the statement`,
      help: 'Name under `at` one of the accelerations that the trial was run at.',
    });
    expect(stated('{value: 50 mm/s, measured}')).toHaveLength(1);
  });
});

describe('an interval beside a limit', () => {
  const stated = (interval: string, result: ReducedResult = flow, more = '') =>
    against('flowLadder', `meltFlow:\n  - {value: 20 mm3/s, interval: ${interval} mm3/s, measured${more}}`, [
      result,
    ]);

  it('is that of the readings, up to rounding to three digits', () => {
    for (const interval of ['29..31', '28.8..31.3', '29.2..30.7'])
      expect(stated(interval), interval).toEqual([]);
    for (const interval of ['28.7..31', '29.3..31', '29..31.4', '29..30.6'])
      expect(stated(interval), interval).toHaveLength(1);
  });

  it('that is another one is told with that of the readings', () => {
    expect(wordsOf(stated('20..25'))).toEqual({
      at: 'meltFlow/0/interval',
      message: `The interval 20..25 mm3/s is not the one that the readings of the trial "${trial}" give: 29..31 mm3/s`,
      found: '20..25 mm3/s',
      allowed: '29..31 mm3/s',
      help: `Compare the readings with the bench sheet; where they are right, run \`meltbounds reduce ${trial} --adopt\`.`,
    });
  });

  it.each([
    [null, null],
    [29, null],
    [null, 31],
  ])('has no support where the readings give the ends %s and %s', (low, high) => {
    const { allowed } = wordsOf(stated('29..31', limitOf('meltFlow', 'volumeFlow', 30, [low, high])));
    expect(allowed).toBe('none, since the ladder does not reach the deficit');
  });

  it('is not told besides a value that is refuted, which is one mistake', () => {
    const both = against('flowLadder', 'meltFlow:\n  - {value: 41 mm3/s, interval: 40..42 mm3/s, measured}', [
      flow,
    ]);
    expect(both.map(({ path }) => path)).toEqual([['meltFlow', 0, 'value']]);
  });

  it('is not told where the readings were changed, which their trial says; a value is', () => {
    expect(stated('20..25', flow, ', readings: 0123456789abcdef')).toEqual([]);
    const value = against(
      'flowLadder',
      'meltFlow:\n  - {value: 41 mm3/s, measured, readings: 0123456789abcdef}',
      [flow],
    );
    expect(value).toHaveLength(1);
  });
});

describe('a trial whose method measures something else', () => {
  it('is told with the methods that measure the property', () => {
    expect(wordsOf(against('flowLadder', 'bridgeSpeed:\n  - {value: 40 mm/s, measured}', [flow]))).toEqual({
      at: 'bridgeSpeed/0/evidence',
      message: `The trial "${trial}" is a flowLadder, which does not measure bridgeSpeed`,
      found: 'flowLadder',
      allowed: 'settingLadder',
      help: 'Name a trial whose method measures it, under the same conditions.',
    });
  });

  it('is told that no method measures it, and what to write then', () => {
    expect(
      wordsOf(against('flowLadder', 'chamberTemperature:\n  - {value: 20..30 Cel, measured}', [flow])),
    ).toEqual({
      at: 'chamberTemperature/0/evidence',
      message: `The trial "${trial}" is a flowLadder, which does not measure chamberTemperature`,
      found: 'flowLadder',
      allowed: 'no measured chamberTemperature: no method finds it',
      help: 'Write `basis: derived` with a `reason` that says how the value follows from the trial, or name the source that states it.',
    });
  });
});

describe('nothing is asked of a trial', () => {
  const above = (statement: string) =>
    hitsIn('evidence/unsupported', [sorrelWith(`meltFlow:\n  - ${statement}\n`), sorrelLadder()], [flow]);

  it('by a value of another basis, or without one, or of a trial that is not there', () => {
    expect(above(`{value: 99 mm3/s, basis: derived, evidence: ${trial}, reason: By hand}`)).toEqual([]);
    expect(above('{value: 99 mm3/s, basis: measured}')).toEqual([]);
    expect(above('{value: 99 mm3/s, basis: measured, evidence: wren-sorrel-pla-231}')).toEqual([]);
    expect(above(`{value: 99 mm3/s, basis: measured, evidence: ${trial}}`)).toHaveLength(1);
  });

  it('whose filament is not there, which is found at the trial', () => {
    const edits = [
      ...sorrelMeasured(
        'flowLadder',
        `meltFlow:\n  - {value: 99 mm3/s, basis: measured, evidence: ${trial}}\n`,
      ),
      {
        in: 'trials/2026/wren-sorrel-pla-230.yaml',
        from: 'filament: oakhollow/sorrel-pla',
        to: 'filament: oakhollow/clouds',
      },
    ];
    expect(hitsIn('evidence/unsupported', edits, [flow])).toEqual([]);
  });
});
