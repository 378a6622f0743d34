import { describe, expect, it } from 'vitest';
import type { Kind } from '../../../src/registry/kind.ts';
import { changed, readText } from '../good-documents.ts';

function found(kind: Kind, from: string, to: string): string[] {
  return readText(kind, changed(kind, from, to)).findings.map(
    ({ rule, pointer, message, help }) => `${rule} ${pointer} ${message} -> ${help}`,
  );
}

describe('a decimal comma between braces', () => {
  it('is one finding, though it splits a number in a value and a key', () => {
    expect(found('machine', '{value: 470 mm/s,', '{value: 4,7 mm/s,')).toEqual([
      'units/number-form /topSpeed/0/value A comma has split a number: 4 stands as the value, "7 mm/s" as a key -> Write `4.7 mm/s` if the comma is the decimal sign; leave it out if it groups thousands.',
    ]);
  });

  it('is told apart from a key that nobody knows', () => {
    expect(found('machine', '{value: 470 mm/s,', '{value: 470 mm/s, speeed: 7,')).toHaveLength(1);
    expect(found('machine', '{value: 470 mm/s,', '{value: 470, speeed: 7,')).toHaveLength(2);
  });
});

describe('two quantities in the places of each other', () => {
  it('are one finding that says to exchange them', () => {
    const two =
      'conditions: {ambientTemperature: 46 %, relativeHumidity: 22 Cel, nozzleTemperature: 230 Cel}';
    expect(found('trial', 'conditions: {nozzleTemperature: 230 Cel}', two)).toEqual([
      'units/wrong-dimension /conditions/ambientTemperature "ambientTemperature" and "relativeHumidity" hold each other\'s values: 46 % and 22 Cel -> Exchange them: `ambientTemperature: 22 Cel` and `relativeHumidity: 46 %`.',
    ]);
  });

  it('are two findings where they would not fit each other', () => {
    const two = 'conditions: {ambientTemperature: 46 %, relativeHumidity: 22 s, nozzleTemperature: 230 Cel}';
    expect(found('trial', 'conditions: {nozzleTemperature: 230 Cel}', two)).toHaveLength(2);
  });
});

describe('unknown keys of one mapping', () => {
  const keys = (count: number) => Array.from({ length: count }, (_, index) => `k${index}: 1`).join('\n');
  const unknown = (count: number) => found('source', 'standing: read', `${keys(count)}\nstanding: read`);

  it('are told one by one up to thirty', () => {
    expect(unknown(30)).toHaveLength(30);
    expect(unknown(30)[0]).not.toContain('such keys');
  });

  it('are counted beyond, since the mapping is something else altogether', () => {
    expect(unknown(5000)).toHaveLength(30);
    expect(unknown(5000)[29]).toContain(
      '"k29" is not a key that this kind of document knows, one of 5000 such keys',
    );
  });
});
