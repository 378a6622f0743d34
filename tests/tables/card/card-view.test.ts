import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardView } from '../../../src/tables/card/card-of-table.ts';
import { cardRoom, firstLine, spread } from '../../../src/tables/card/card-view.ts';
import { tableWith } from '../derive/pairing-with.ts';
import { longTable } from './long-table.ts';

const table = tableWith();
const card = cardView(table);

describe('the card of a table', () => {
  it('says what to set the nozzle to, and what the house uses of the largest flow', () => {
    const { temperatures, largestFlow } = table;
    const value = (name: string) => card.settings.find((setting) => setting.name === name)?.value;
    expect(value('Nozzle')).toBe(`${temperatures.print} °C`);
    expect(value('First layer')).toBe(`${temperatures.firstLayer} °C`);
    expect(value('Flow to use')).toBe(`${largestFlow.usable} mm³/s`);
  });

  it('names a deficit only where a ladder came to it, and says what the statement of the limit adds', () => {
    const noteOf = (largestFlow: typeof table.largestFlow) =>
      cardView({ ...table, largestFlow }).settings.find(({ name }) => name === 'Flow to use')?.note;
    const interval = { low: 25.1, high: 26.9 };
    const flow = { ...table.largestFlow, limit: 26, acceptedDeficit: 0.05, isSimulated: false };
    expect(noteOf({ ...flow, interval, note: null })).toBe(
      'largest flow 26 mm³/s (25.1 to 26.9, at 5 % deficit), measured',
    );
    expect(noteOf({ ...flow, interval: null, note: 'A lower bound: the drive halted at 64 mm3/s' })).toBe(
      'largest flow 26 mm³/s, measured, A lower bound: the drive halted at 64 mm³/s',
    );
  });

  it('has the speeds of the narrowest line, and no others', () => {
    const width = Math.min(...table.rows.map(({ lineWidth }) => lineWidth));
    expect(card.lineWidth).toBe(width);
    for (const { name, speeds } of card.features) {
      const feature = name.toLowerCase().replace(/ (.)/, (_, letter: string) => letter.toUpperCase());
      const rows = table.rows.filter((row) => row.feature === feature && row.lineWidth === width);
      expect(speeds).toEqual(
        card.layerHeights.map((height) => rows.find((row) => row.layerHeight === height)!.speed),
      );
    }
  });

  it('names every bound of a feature, each with the layer height from which on it holds', () => {
    const [first, , last] = [0.15, 0.3, 0.42];
    const rows = table.rows
      .filter(({ feature }) => feature === 'infill')
      .slice(0, 3)
      .map((row, index) => ({
        ...row,
        layerHeight: [first, 0.3, last][index]!,
        lineWidth: 0.66,
        bound: (['quality', 'quality', 'melt'] as const)[index]!,
        basis: (['assumed', 'assumed', 'measured'] as const)[index]!,
        flags: (['untested'] as const).slice(index),
        quirks: index === 2 ? [1] : [],
      }));
    const { features, marks } = cardView({ ...table, rows });
    expect(features.map(({ limitedBy }) => limitedBy)).toEqual([
      'quality (assumed)*, quality (assumed) from 0.3 mm, melt†2 from 0.42 mm',
    ]);
    expect(marks).toEqual([
      '* untested: what that means stands overleaf',
      '† the quirk of that number concerns it',
    ]);
  });

  it('says "not stated" and "not measured" where nothing is known', () => {
    const conditions = table.conditions.map((row) => ({
      ...row,
      window: null,
      isStated: false,
      ofFamily: row.name.startsWith('drying') ? { family: 'PLA', low: 40, high: 50 } : null,
    }));
    const { settings, besides } = cardView({ ...table, conditions });
    expect(settings.slice(3)).toEqual([
      { name: 'Bed', value: 'not stated', note: '' },
      { name: 'Chamber', value: 'not stated', note: '' },
      { name: 'Drying', value: 'not stated', note: 'PLA as published: 40 to 50 °C, 40 to 50 h' },
    ]);
    expect(besides.map(({ name, value }) => [name, value])).toEqual([
      ['Retraction', 'not measured'],
      ['Pressure compensation', 'not measured'],
      ['Shortest layer', 'not stated'],
    ]);
  });

  it('rounds hours of drying up to a tenth', () => {
    const conditions = table.conditions.map((row) =>
      row.name === 'dryingTime' ? { ...row, isStated: true, window: { low: 8.8105, high: 8.8105 } } : row,
    );
    const drying = cardView({ ...table, conditions }).settings.at(-1);
    expect(drying?.value).toMatch(/, 8\.9 h$/);
  });

  it('has a digest that changes with any file that it rests on, and with nothing else', () => {
    expect(card.digest).toMatch(/^[0-9a-f]{8}$/);
    expect(cardView(tableWith()).digest).toBe(card.digest);
    const [first, ...others] = table.inputs;
    const changed = { ...table, inputs: [{ ...first!, digest: '0'.repeat(64) }, ...others] };
    expect(cardView(changed).digest).not.toBe(card.digest);
  });

  it('says at its head that readings are simulated and profiles invented', () => {
    expect(cardView(longTable()).origin).toBe('Simulated readings and invented profiles');
    expect(cardView({ ...table, origin: { simulated: [], invented: [] } }).origin).toBeNull();
  });
});

describe('what has no room on the card', () => {
  const long = cardView(longTable());

  it('is counted, and every line that stays is the first of its text', () => {
    expect(long.layerHeights).toEqual([0.12, 0.3, 0.45]);
    expect(long.overleaf).toEqual(['9 more layer heights', '9 more quirks', '10 more warnings']);
    expect(long.notes.map(({ label }) => label)).toEqual([
      'Quirk 1',
      'Quirk 2',
      'Quirk 3',
      'Warning',
      'Warning',
    ]);
    for (const { text } of long.notes) expect(text.length).toBeLessThanOrEqual(cardRoom.noteLength);
  });

  it('is cut between two words, and never longer than asked', () => {
    expect(firstLine('One two three', 13)).toBe('One two three');
    expect(firstLine('One two, three four', 12)).toBe('One two…');
    expect(firstLine('It falls above 55 mm³/s', 20)).toBe('It falls above…');
    expect(firstLine('It falls -> without fans', 20)).toBe('It falls…');
    fc.assert(
      fc.property(fc.string({ maxLength: 300 }), fc.integer({ min: 5, max: 120 }), (text, length) => {
        const line = firstLine(text, length);
        expect(line.length).toBeLessThanOrEqual(length);
        expect(line).not.toMatch(/\n/);
      }),
    );
  });

  it('leaves the lowest and the highest, and what lies evenly between', () => {
    expect(spread([1, 2], 3)).toEqual([1, 2]);
    expect(spread([1, 2, 3, 4, 5], 3)).toEqual([1, 3, 5]);
  });
});
