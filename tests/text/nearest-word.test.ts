import { describe, expect, test } from 'vitest';
import { nearestWord } from '../../src/text/nearest-word.ts';

const keys = ['nozzleTemperature', 'bedTemperature', 'density', 'id', 'at'];

describe('the word that was meant', () => {
  test.each([
    ['nozzleTemprature', 'nozzleTemperature'],
    ['nozzletemperature', 'nozzleTemperature'],
    ['nozzle_temperature', 'nozzleTemperature'],
    ['bedtemp', null],
    ['desity', 'density'],
    ['dexxity', 'density'],
    ['dexxxty', null],
    ['colour', null],
    ['ID', 'id'],
    ['ix', 'id'],
    ['xy', null],
    ['di', 'id'],
    ['bedTempertaure', 'bedTemperature'],
    ['denstiy', 'density'],
  ])('%s: %s', (written, meant) => {
    expect(nearestWord(written, keys)).toBe(meant);
  });

  test('two neighbours that changed places are one step', () => {
    expect(nearestWord('vlaue', ['value'])).toBe('value');
    expect(nearestWord('vlaeu', ['value'])).toBeNull();
    expect(nearestWord('eulav', ['value'])).toBeNull();
  });

  test('is the first of several that are equally near', () => {
    expect(nearestWord('cat', ['bat', 'rat'])).toBe('bat');
  });

  test('is null where there are no words, or the text is no word', () => {
    expect(nearestWord('id', [])).toBeNull();
    expect(nearestWord('a'.repeat(61), ['a'.repeat(61)])).toBeNull();
    expect(nearestWord('a'.repeat(60), ['a'.repeat(60)])).toBe('a'.repeat(60));
  });
});
