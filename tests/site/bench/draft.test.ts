import { describe, expect, it } from 'vitest';
import { draftOf, type Entry, type EntryContent } from '../../../src/site/bench/draft.ts';
import {
  currentEntry,
  draftForm,
  formatDraftFile,
  readDraftFile,
} from '../../../src/site/bench/draft-form.ts';
import { readTyped } from '../../../src/site/bench/typed-number.ts';
import { askedFor, demo, demoSession, plannedDraft } from './demo-bench.ts';

const session = demoSession('brackwater/lantern', 'ashgrove/stagecraft-pla');
const planned = plannedDraft(session, askedFor(demo.trial.get('lantern-stagecraft-pla-230')!));
const stamped = (content: EntryContent, time: number, by = 'one'): Entry => ({
  draft: 'd',
  time,
  by,
  ...content,
});
const begun = planned.map((content) => stamped(content, 1));
const batch = (value: string): EntryContent => ({ part: 'field', name: 'batch', value });

describe('a draft', () => {
  it('is what its entries make, in whatever order they come', () => {
    const entries = [...begun, stamped(batch('A'), 2), stamped(batch('B'), 3)];
    expect(draftOf(entries)).toEqual(draftOf(entries.toReversed()));
    expect(draftOf(entries)?.fields.get('batch')).toBe('B');
  });

  it('keeps what two pages have typed in different rows, and of one row the later', () => {
    const [first, second] = planned.filter((entry) => entry.part === 'row');
    const typed = (row: typeof first, mass: string) => ({
      ...row!,
      value: { ...row!.value, cells: row!.value.cells.with(-1, mass) },
    });
    const entries = [
      ...begun,
      stamped(typed(first, '2.98'), 5, 'one'),
      stamped(typed(second, '2.97'), 4, 'two'),
      stamped(typed(first, '2.95'), 3, 'two'),
    ];
    expect(
      draftOf(entries)
        ?.rows.slice(0, 2)
        .map(({ cells }) => cells.at(-1)),
    ).toEqual(['2.98', '2.97']);
  });

  it('goes by the page where two texts are of the same moment, on both pages alike', () => {
    const one = stamped(batch('A'), 2, 'one');
    const two = stamped(batch('B'), 2, 'two');
    expect(draftOf([...begun, one, two])).toEqual(draftOf([...begun, two, one]));
  });

  it('is none without its head', () => {
    expect(draftOf(begun.filter(({ part }) => part !== 'head'))).toBeNull();
  });
});

describe('the file of a draft', () => {
  it('gives it back', () => {
    expect(readDraftFile(formatDraftFile(begun))).toEqual(begun);
  });

  it.each([
    ['a later form', formatDraftFile(begun).replace(`meltbounds-draft/${draftForm}`, 'meltbounds-draft/99')],
    ['another file', '{"format": "meltbounds-plan/1"}'],
    ['no JSON', 'commandedFlow [mm3/s]'],
    ['no head', formatDraftFile(begun.filter(({ part }) => part !== 'head'))],
    ['cells that are no texts', formatDraftFile(begun).replace('"cells": [', '"cells": [1, ')],
  ])('is refused with %s', (_, text) => {
    expect(readDraftFile(text)).toBeNull();
  });
});

describe('an entry of an older form', () => {
  const [older] = begun;
  const steps = [
    (entry: object) => ({ ...entry, second: true }),
    (entry: object) => ({ ...entry, third: true }),
  ];

  it('goes through the steps from its form to that of today', () => {
    expect(currentEntry(1, older, steps)).toMatchObject({ second: true, third: true });
    expect(currentEntry(2, older, steps)).toEqual({ ...older, third: true });
    expect(currentEntry(3, older, steps)).toEqual(older);
  });

  it('is left alone where it is of a later one', () => {
    expect(currentEntry(4, older, steps)).toBeNull();
  });
});

it.each([
  ['2,98', { kind: 'number', text: '2.98' }],
  ['2.980', { kind: 'number', text: '2.980' }],
  [' 1100 ', { kind: 'number', text: '1100' }],
  ['-.5', { kind: 'number', text: '-.5' }],
  ['', { kind: 'empty' }],
  ['1,234.5', { kind: 'other' }],
  ['3 g', { kind: 'other' }],
])('the cell `%s` is read as %j', (cell, read) => {
  expect(readTyped(cell)).toEqual(read);
});
