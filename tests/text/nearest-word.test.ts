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

describe('among thousands of words', () => {
  const words = Array.from(
    { length: 5000 },
    (_, index) => `lantern-pla-${String(index).padStart(4, '0')}-${index % 7}`,
  );

  test.each([
    ['lantern-pla-0420-00', 'lantern-pla-0420-0'],
    ['lanterm-pla-4321-2', 'lantern-pla-4321-2'],
    ['antern-pla-0007-0', 'lantern-pla-0007-0'],
  ])('%s is taken for %s', (written, meant) => {
    expect(nearestWord(written, words)).toBe(meant);
  });

  test('a word unlike all of them is taken for none', () => {
    expect(nearestWord('skiff-petg', words)).toBeNull();
  });
});
