import { describe, expect, it, test } from 'vitest';
import { formatDocument } from '../../src/units/format-document.ts';
import { shown, shownNumber, shownRange } from '../../src/units/wording.ts';

describe('a message shows', () => {
  it('a value in the unit of the trade, with four digits', () => {
    expect(shown(0.00123456, 'density')).toBe('1.235 g/cm3');
    expect(shown(0.93, 'ratio')).toBe('93 %');
  });

  it('a range with one unit', () => {
    expect(shownRange({ low: 190, high: 235.678 }, 'temperature')).toBe('190..235.7 Cel');
  });

  it('a pure number with four digits', () => {
    expect([shownNumber(2.5), shownNumber(1.23456)]).toEqual(['2.5', '1.235']);
  });
});

test('a document is printed in each form, its quantities as print writes them', () => {
  const document = {
    title: 'Limits',
    blocks: [
      { kind: 'paragraph', text: 'At 230 Cel.' },
      { kind: 'paragraph', text: 'At 245 Cel.' },
    ],
  } as const;
  expect(formatDocument(document, 'text')).toBe('Limits\n\nAt 230 °C.\n\nAt 245 °C.\n');
  expect(formatDocument(document, 'markdown')).toBe('# Limits\n\nAt 230 °C.\n\nAt 245 °C.\n');
  expect(formatDocument(document, 'html')).toBe(
    '<header><h1>Limits</h1></header>\n<main>\n<p>At 230 °C.</p>\n<p>At 245 °C.</p>\n</main>\n',
  );
});

test('a document is printed as wide as is asked for', () => {
  const document = { title: null, blocks: [{ kind: 'paragraph', text: 'one two three four' }] } as const;
  expect(formatDocument(document, 'text', { width: 10 })).toBe('one two\nthree four\n');
});
