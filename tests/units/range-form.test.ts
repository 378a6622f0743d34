import { describe, expect, test } from 'vitest';
import { cutAtDots, splitRange } from '../../src/units/range-form.ts';

describe('a range cut at its dots', () => {
  test.each([
    ['190..235 Cel', { left: '190', separator: '..', right: '235 Cel' }],
    [' 190 .. 235 Cel ', { left: '190', separator: '..', right: '235 Cel' }],
    ['..235 Cel', { left: '', separator: '..', right: '235 Cel' }],
    ['190..200..210', { left: '190', separator: '..', right: '200..210' }],
  ])('%j has two sides', (text, parts) => expect(cutAtDots(text)).toEqual(parts));

  test.each(['190 Cel', '190.235', '190...235', ''])('%j is none', (text) =>
    expect(cutAtDots(text)).toBeUndefined(),
  );
});

describe('a range however it is written', () => {
  test.each([
    ['190 Cel..235 Cel', { left: '190 Cel', separator: '..', right: '235 Cel' }],
    ['190-235 Cel', { left: '190', separator: '-', right: '235 Cel' }],
    ['190 to 235 Cel', { left: '190', separator: 'to', right: '235 Cel' }],
    ['190 … 235 Cel', { left: '190', separator: '…', right: '235 Cel' }],
    ['190...235 Cel', { left: '190', separator: '...', right: '235 Cel' }],
  ])('%j has two numbers', (text, parts) => expect(splitRange(text)).toEqual(parts));

  test.each([
    '190 Cel',
    'hot..235 Cel',
    '190..hot',
    '..235',
    '190..',
    'to 235',
    '190 - hot',
    '190 towards 235',
    '',
  ])('%j has not', (text) => expect(splitRange(text)).toBeUndefined());

  test('is looked for at the beginning of a text alone', () => {
    expect(splitRange(`190${' '.repeat(250)}-235 Cel`)).toBeUndefined();
  });
});
