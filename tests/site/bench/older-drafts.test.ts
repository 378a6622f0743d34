import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { draftOf } from '../../../src/site/bench/draft.ts';
import { currentEntry, draftForm, readDraftFile } from '../../../src/site/bench/draft-form.ts';
import { reduceDraft } from '../../../src/site/bench/reduce-draft.ts';
import { demoSession } from './demo-bench.ts';
import { keptRecords } from './kept-records.ts';

/** What the page of each form had of a run that was typed on it in a browser; all that was typed besides stands in its files. */
const written = [
  {
    form: 1,
    typed: { rows: 32, first: '3,36', twentieth: '2,47', next: '', batch: '26-0611', stripped: '70' },
    limit: { name: 'melt flow limit', value: '45 mm³/s', interval: '44.3–45.6 mm³/s' },
  },
];

const fileOf = (form: number) => readFileSync(new URL(`drafts/form-${form}.draft`, import.meta.url), 'utf8');

describe('drafts that the pages of older versions wrote', () => {
  it('are kept of every form that there was, today’s among them', () => {
    expect(written.map(({ form }) => form)).toEqual(
      Array.from({ length: draftForm }, (_, index) => index + 1),
    );
  });

  it.each(written)('open from their file with all that was typed: form $form', ({ form, typed }) => {
    const draft = draftOf(readDraftFile(fileOf(form)) ?? []);
    const masses = draft?.rows.map(({ cells }) => cells.at(-1)) ?? [];
    expect({
      ...{ rows: masses.length, first: masses[0], twentieth: masses[19], next: masses[20] },
      ...{ batch: draft?.fields.get('batch'), stripped: draft?.event?.flow },
    }).toEqual(typed);
  });

  it.each(written)('open from the store of the browser with the same: form $form', ({ form }) => {
    const { records } = keptRecords(form);
    const entries = records.flatMap((each) => currentEntry(each.form, each.entry) ?? []);
    expect(entries).toHaveLength(records.length);
    expect(draftOf(entries)).toEqual(draftOf(readDraftFile(fileOf(form)) ?? []));
  });

  it.each(written)('still give the limit that they gave: form $form', ({ form, limit }) => {
    const draft = draftOf(readDraftFile(fileOf(form)) ?? []);
    const session = demoSession('tollwick/steeple', 'ashgrove/stagecraft-petg');
    expect(draft === null ? null : reduceDraft(session, draft).results[0]).toMatchObject(limit);
  });
});
