import { expect, test } from 'vitest';
import { unknownWord, wordHint } from '../../src/text/unknown-word.ts';

test('an unknown word names the one that may be meant, else all that there are', () => {
  expect(unknownWord('unknownNozzle', 'nozzle', 'hs-0.5', ['hs-0.4', 'brass'])).toEqual({
    code: 'unknownNozzle',
    message: 'There is no nozzle "hs-0.5"',
    help: 'Did you mean "hs-0.4"?',
  });
  expect(wordHint('x', ['hs-0.4', 'brass'])).toBe('There are: hs-0.4, brass.');
  expect(wordHint('x', [])).toBe('There are: none.');
});

test('where no word is near, something else may be said', () => {
  expect(wordHint('x', ['hs-0.4'], 'Look at the list.')).toBe('Look at the list.');
});
