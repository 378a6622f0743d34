import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { features } from '../../../src/knowledge/feature.ts';
import { formatTableAsHtml } from '../../../src/tables/card/table-as-html.ts';
import { formatTableAsCsv } from '../../../src/tables/write/table-as-csv.ts';
import { formatTableAsJson } from '../../../src/tables/write/table-as-json.ts';
import { formatTableAsMarkdown } from '../../../src/tables/write/table-as-markdown.ts';
import { formatTableAsText } from '../../../src/tables/write/table-as-text.ts';
import { formatTableCsvMetadata } from '../../../src/tables/write/table-csv-metadata.ts';
import { tableWith } from './pairing-with.ts';

const note = (what: string, date: string) => ({ date, what, effect: 'Ladders read lower' });

const quirky = tableWith({
  machine: {
    invented: true,
    fieldNotes: [
      { ...note('The fan cools the nozzle', '2026-05-07'), concerns: { aboveFlow: 20 } },
      {
        ...note('A warm drive slips', '2026-06-01'),
        concerns: { nozzleTemperature: { low: 225, high: 240 } },
      },
      { ...note('Only of another nozzle', '2026-06-02'), concerns: { nozzle: 'hs-0.4' } },
    ],
  },
  filament: { fieldNotes: [note('Dust in the path', '2026-03-01')] },
});

const unwrapped = (text: string) => text.replace(/\s+/g, ' ');

describe('quirks of a table', () => {
  it('are those of machine and filament, the newest first, without those of another nozzle', () => {
    expect(quirky.quirks.map(({ what }) => what)).toEqual([
      'A warm drive slips',
      'The fan cools the nozzle',
      'Dust in the path',
    ]);
  });

  it('stand at the rows that go where they show', () => {
    for (const { feature, flow, flags, quirks } of quirky.rows) {
      expect([feature, flow, quirks]).toEqual([feature, flow, flow > 20 ? [0, 1] : [0]]);
      expect(flags).toContain('quirk');
    }
    const cool = tableWith(
      { machine: { fieldNotes: [{ ...note('Slips', '2026-06-01'), concerns: { aboveFlow: 20 } }] } },
      { temperature: 215 },
    );
    expect(new Set(cool.rows.flatMap(({ quirks }) => quirks))).toEqual(new Set());
  });

  it('reach every form', () => {
    const csv = parse(formatTableAsCsv(quirky), { columns: true }) as Record<string, string>[];
    const infill = csv.find(({ feature }) => feature === 'infill')!;
    for (const text of [
      unwrapped(formatTableAsText(quirky)),
      formatTableAsMarkdown(quirky),
      formatTableAsJson(quirky),
      formatTableAsHtml(quirky),
      formatTableCsvMetadata(quirky, 'table.csv'),
      infill.quirks ?? '',
    ]) {
      for (const what of ['A warm drive slips', 'The fan cools the nozzle', 'Dust in the path']) {
        expect(text).toContain(what);
      }
    }
    expect(csv.find(({ feature }) => feature === 'firstLayer')!.quirks).not.toContain('The fan cools');
    expect(JSON.parse(formatTableAsJson(quirky)).rows[0].quirks).toEqual([0]);
  });
});

describe('what is not real', () => {
  it('is named: trials that were simulated, profiles that are invented', () => {
    expect(quirky.origin).toEqual({
      simulated: ['wren-daisy-pla-215', 'wren-daisy-pla-230'],
      invented: [{ kind: 'machine', id: 'plumstead/wren' }],
    });
  });

  it('is said at the head of every form that people read, and flagged in the others', () => {
    const sentence =
      /Simulated readings \(trials wren-daisy-pla-215 and wren-daisy-pla-230\) and invented profiles \(machine plumstead\/wren\): no bench has measured this\./;
    const text = unwrapped(formatTableAsText(quirky));
    expect(text).toMatch(sentence);
    expect(text.search(sentence)).toBeLessThan(text.indexOf('Speeds in mm/s'));
    expect(formatTableAsMarkdown(quirky)).toMatch(sentence);
    expect(formatTableCsvMetadata(quirky, 'table.csv')).toMatch(sentence);
    const csv = parse(formatTableAsCsv(quirky), { columns: true }) as Record<string, string>[];
    for (const { flags } of csv) expect(flags).toContain('invented');
    expect(csv.find(({ bound }) => bound === 'melt')?.flags).toContain('simulated');
  });
});

describe('what to test next', () => {
  const next = (table: ReturnType<typeof tableWith>) => unwrapped(formatTableAsText(table));

  it('is named where what holds speeds is not measured', () => {
    expect(next(quirky)).toMatch(/To go by measurements alone, test next: .*contour speed \(assumed\)/);
  });

  it('is nothing where every speed is held by a measurement or by the house', () => {
    const slow = { speed: 5, reason: 'Habit' };
    const caps = Object.fromEntries(features.map((feature) => [feature, slow]));
    const policy = { caps };
    expect(next(tableWith({ policy }))).not.toContain('test next');
  });
});
