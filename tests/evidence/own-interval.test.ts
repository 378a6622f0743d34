import { describe, expect, it } from 'vitest';
import { sorrelLadder, sorrelWith } from '../rules/second-profiles.ts';
import { hitsIn } from './edited-registry.ts';

/** What is found in Sorrel PLA with a property, of which there are no results to ask. */
const found = (property: string, statement: string) =>
  hitsIn(
    'evidence/value-above-interval',
    [sorrelWith(`${property}:\n  - {${statement}}\n`), sorrelLadder()],
    null,
  );

const flow = (value: string, interval: string, more = 'basis: assumed, reason: By hand') =>
  found('meltFlow', `value: ${value} mm3/s, interval: ${interval} mm3/s, ${more}`);

describe('a value that is safe below', () => {
  it('may lie anywhere up to the upper end of its interval', () => {
    for (const value of ['1', '20', '30']) expect(flow(value, '20..30'), value).toEqual([]);
  });

  it('above it is told with the end that it may reach', () => {
    expect(flow('31', '20..30')).toEqual([
      {
        path: ['meltFlow', 0, 'value'],
        part: 'value',
        message: '31 mm3/s lies above its interval 20..30 mm3/s',
        found: '31 mm3/s',
        allowed: 'up to 30 mm3/s',
        help: 'Adopt a value within the interval or below; check the digits of both.',
      },
    ]);
  });
});

describe('a value that is safe above', () => {
  const time = (value: string) =>
    found('shortestLayerTime', `value: ${value}, interval: 7..9 s, basis: assumed, reason: By hand`);

  it('may lie anywhere from the lower end of its interval on', () => {
    for (const value of ['7 s', '9 s', '20 s']) expect(time(value), value).toEqual([]);
  });

  it('below it is told from where on it is safe', () => {
    expect(time('6 s')).toMatchObject([
      {
        message: '6 s lies below its interval 7..9 s',
        found: '6 s',
        allowed: 'from 7 s',
        help: 'Adopt a value within the interval or above; check the digits of both.',
      },
    ]);
  });
});

describe('a value that is safe only within', () => {
  const speed = (value: string) =>
    found(
      'retractionSpeed',
      `value: ${value} mm/s, interval: 35..50 mm/s, basis: assumed, reason: By hand`,
    ).map(({ message, allowed, help }) => [message, allowed, help]);
  const help = 'Adopt a value within the interval; check the digits of both.';

  it('may reach either end, and passes neither', () => {
    for (const value of ['35', '40', '50']) expect(speed(value), value).toEqual([]);
    expect(speed('34')).toEqual([['34 mm/s lies below its interval 35..50 mm/s', 'from 35 mm/s', help]]);
    expect(speed('51')).toEqual([['51 mm/s lies above its interval 35..50 mm/s', 'up to 50 mm/s', help]]);
  });
});

describe('a value that no method measures', () => {
  it('is to lie below the upper end of its interval', () => {
    const density = (value: string) =>
      found('softening', `value: ${value} Cel, interval: 55..60 Cel, basis: assumed, reason: By hand`);
    expect(density('50')).toEqual([]);
    expect(density('61')).toHaveLength(1);
  });
});

describe('the interval of a statement is not asked', () => {
  it('where the readings of its trial are', () => {
    expect(flow('31', '20..30', 'basis: measured, evidence: wren-sorrel-pla-230')).toEqual([]);
    expect(flow('31', '20..30', 'basis: measured, evidence: wren-sorrel-pla-231')).toHaveLength(1);
    expect(flow('31', '20..30', 'basis: measured')).toHaveLength(1);
    const derived = 'basis: derived, reason: By hand, evidence: wren-sorrel-pla-230';
    expect(flow('31', '20..30', derived)).toHaveLength(1);
  });

  it('but where no method measures the property, a trial of it says nothing', () => {
    const softening = 'value: 61 Cel, interval: 55..60 Cel, basis: measured, evidence: wren-sorrel-pla-230';
    expect(found('softening', softening)).toHaveLength(1);
  });

  it('where there is none, or the value is a range', () => {
    expect(found('meltFlow', 'value: 31 mm3/s, basis: assumed, reason: By hand')).toEqual([]);
    const range = 'value: 20..40 Cel, interval: 20..30 Cel, basis: assumed, reason: By hand';
    expect(found('chamberTemperature', range)).toEqual([]);
  });
});
