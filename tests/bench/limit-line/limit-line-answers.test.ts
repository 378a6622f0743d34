import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitLimitLine, type LimitLine } from '../../../src/bench/limit-line/limit-line.ts';
import { limitAt, temperatureForFlow } from '../../../src/bench/limit-line/limit-line-answers.ts';

/** Through limits with intervals of ±1 mm3/s. */
function lineThrough(...limits: readonly (readonly [temperature: number, limit: number])[]): LimitLine {
  const line = fitLimitLine(
    limits.map(([temperature, limit]) => ({ temperature, limit, low: limit - 1, high: limit + 1 })),
  );
  if (!line.ok) throw new Error(line.error.message);
  return line.value;
}

const rising = lineThrough([210, 20], [220, 24], [230, 28], [240, 32]);

function answerOf<Value>(result: { ok: true; value: Value } | { ok: false; error: unknown }): Value {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

describe('the limit at a temperature', () => {
  it('is that of the line, with a band that is narrowest in the middle', () => {
    const [edge, middle] = [210, 225].map((temperature) => answerOf(limitAt(rising, temperature)));
    expect(middle).toMatchObject({ temperature: 225, extrapolated: false });
    expect(middle?.limit).toBeCloseTo(26, 9);
    expect(middle!.high - middle!.low).toBeLessThan(edge!.high - edge!.low);
  });

  it('at a tested temperature of two has the interval of that trial', () => {
    const answer = answerOf(limitAt(lineThrough([210, 20], [230, 30]), 210));
    expect(answer.low).toBeCloseTo(19, 9);
    expect(answer.high).toBeCloseTo(21, 9);
  });

  it.each([209.9, 240.1, Number.NaN])('outside of those tested, %f, is not given', (temperature) => {
    expect(limitAt(rising, temperature)).toMatchObject({ ok: false, error: { code: 'outsideTested' } });
  });

  it('outside of those tested is marked when it is asked for all the same', () => {
    const answer = answerOf(limitAt(rising, 250, { extrapolate: true }));
    expect(answer.extrapolated).toBe(true);
    expect(answer.limit).toBeCloseTo(36, 9);
  });
});

describe('the temperature for a flow', () => {
  it('on the line is its inverse', () => {
    const answer = answerOf(temperatureForFlow(rising, 26, { side: 'centre' }));
    expect(answer.temperature).toBeCloseTo(225, 9);
  });

  it('is hotter on the safe side, where the lower end of the band carries the flow', () => {
    const { temperature } = answerOf(temperatureForFlow(rising, 26));
    expect(temperature).toBeGreaterThan(225);
    expect(answerOf(limitAt(rising, temperature)).low).toBeCloseTo(26, 9);
  });

  it('for a flow that the lowest tested temperature carries is that temperature', () => {
    expect(temperatureForFlow(rising, 10)).toEqual({
      ok: true,
      value: { temperature: 210, isLowestTested: true },
    });
  });

  it('is not given beyond what was tested', () => {
    const beyond = temperatureForFlow(rising, 40, { side: 'centre' });
    expect(beyond).toMatchObject({ ok: false, error: { code: 'beyondTested' } });
    if (!beyond.ok) expect(beyond.error.highestFlow).toBeCloseTo(32, 9);
  });

  it('is the lowest that carries the flow, and what lies beyond is the highest flow that any carries', () => {
    const limit = fc.double({ min: 10, max: 40, noNaN: true });
    fc.assert(
      fc.property(limit, limit, limit, fc.double({ min: 5, max: 45, noNaN: true }), (a, b, c, flow) => {
        const line = lineThrough([210, a], [220, b], [240, c]);
        const steps = Array.from({ length: 301 }, (_, step) => 210 + step / 10);
        const lows = steps.map((temperature) => answerOf(limitAt(line, temperature)).low);
        const first = steps[lows.findIndex((low) => low >= flow)];
        const answer = temperatureForFlow(line, flow);
        if (answer.ok) {
          expect(answerOf(limitAt(line, answer.value.temperature)).low).toBeGreaterThan(flow - 1e-6);
          if (first !== undefined) expect(answer.value.temperature).toBeLessThanOrEqual(first + 1e-6);
        } else {
          expect(first).toBeUndefined();
          expect(answer.error.highestFlow).toBeGreaterThanOrEqual(Math.max(...lows) - 1e-6);
          expect(answer.error.highestFlow).toBeLessThan(flow);
        }
      }),
    );
  });
});
