/** @module-tag long */
import { describe, expect, it } from 'vitest';
import { planTrial } from '../../../src/decisions/plan/plan-trial.ts';
import { readProfile } from '../../../src/registry/read-profile.ts';
import { fileOfText, refused } from '../../../src/registry/registry-file.ts';
import type { EntryContent } from '../../../src/site/bench/draft.ts';
import { entriesOfPlan } from '../../../src/site/bench/draft-of-plan.ts';
import { intervalAdvice } from '../../../src/site/bench/interval-advice.ts';
import { judgeDraft } from '../../../src/site/bench/judge-draft.ts';
import { measuredRuns } from '../../../src/site/bench/measured.ts';
import { nextStep } from '../../../src/site/bench/plan-draft.ts';
import type { BenchSession } from '../../../src/site/bench/session.ts';
import { askedFor, demo, demoSession, drafted, plannedDraft, typedTrial } from './demo-bench.ts';

const trials = [...demo.trial.values()];
const ladder = demo.trial.get('lantern-stagecraft-pla-230')!;
const sessionOf = ({ data }: typeof ladder, own?: () => boolean) =>
  demoSession(data.machine ?? 'brackwater/lantern', data.filament, own);

/** The draft of a trial with some entries on top. */
function changed(session: BenchSession, ...contents: EntryContent[]) {
  const { head, rows, fields } = typedTrial(session, ladder);
  return drafted(
    [
      { part: 'head', value: head },
      ...rows.map(({ name, ...value }): EntryContent => ({ part: 'row', name, value })),
      ...[...fields].map(([name, value]): EntryContent => ({ part: 'field', name, value })),
    ],
    contents,
  );
}

it.each(trials.map(({ id }) => id))(
  'what was planned for the pairing of %s is what `plan` lays out',
  (id) => {
    const trial = demo.trial.get(id)!;
    const session = sessionOf(trial);
    const { nozzle, subject, temperature: _, policy: __, read: ___, ...pairing } = askedFor(trial);
    const asked = { ...pairing, ...(nozzle !== null && { nozzle }), ...(subject !== null && { subject }) };
    const planned = planTrial(demo, { ...asked, today: session.today });
    if (!planned.ok) throw new Error(planned.error.message);
    expect(plannedDraft(session, askedFor(trial))).toEqual(entriesOfPlan(planned.value, askedFor(trial)));
  },
);

describe('the files of a draft', () => {
  it.each(trials.map(({ id }) => id))('say of %s what its own file says', (id) => {
    const trial = demo.trial.get(id)!;
    const [file] = judgeDraft(sessionOf(trial), typedTrial(sessionOf(trial), trial)).files;
    const root = { shown: '' };
    const { document } = readProfile(fileOfText(root, 'trials/2026/typed.yaml', file?.text ?? ''), () =>
      refused(root, 'typed.csv', 'missing'),
    );
    expect(document?.written).toEqual({
      ...(trial.written as object),
      id: `${id}-typed`,
      observations: { file: `${id}-typed.csv` },
      ...{ notice: undefined, fieldNotes: undefined },
      ...(trial.data.events === undefined ? {} : { events: expect.anything() }),
    });
  });

  it('are the trial, its sheet, and the profile with the limit', () => {
    const session = sessionOf(ladder);
    const { files } = judgeDraft(session, typedTrial(session, ladder));
    expect(files.map(({ what, path, isNew }) => [what, path, isNew])).toEqual([
      ['trial', 'profiles/trials/2026/lantern-stagecraft-pla-230-typed.yaml', true],
      ['sheet', 'profiles/trials/2026/lantern-stagecraft-pla-230-typed.csv', true],
      ['statement', 'profiles/filaments/ashgrove/stagecraft-pla.yaml', false],
    ]);
    expect(files[2]?.text).toContain('evidence: lantern-stagecraft-pla-230-typed');
  });

  it('are an addition where the filament belongs to a registry below', () => {
    const session = sessionOf(ladder, () => false);
    const { files } = judgeDraft(session, typedTrial(session, ladder));
    expect(files[2]).toMatchObject({
      what: 'addition',
      path: 'profiles/additions/ashgrove-stagecraft-pla.yaml',
      isNew: true,
    });
    expect(files[2]?.text).toMatch(
      /^# yaml-language-server: \$schema=\.\.\/\.\.\/schema\/addition\.schema\.json\n/,
    );
  });
});

describe('what `check` would say', () => {
  const session = sessionOf(ladder);

  it('is that readings are copied where they are those of another trial of the machine', () => {
    const { findings } = judgeDraft(session, typedTrial(session, ladder));
    expect(findings.map(({ rule }) => rule)).toContain('identity/copied-readings');
  });

  it('names the row that a finding is about', () => {
    const { rows } = typedTrial(session, ladder);
    const { name, ...row } = rows[5]!;
    const slip = { part: 'row', name, value: { ...row, cells: row.cells.with(-1, '1.020') } } as const;
    const { findings } = judgeDraft(session, changed(session, slip));
    expect(findings.find(({ rule }) => rule === 'evidence/reading-off-trend')?.row).toBe(name);
  });

  it('tells a fact of a wrong form, and the trial stays readable', () => {
    const scale = { part: 'field', name: 'scale.resolution', value: '0,01' } as const;
    const { findings } = judgeDraft(session, changed(session, scale));
    expect(findings.map(({ severity, rule }) => [severity, rule])).toContainEqual([
      'error',
      'units/number-form',
    ]);
  });

  it('spells a quantity as profiles do before it judges', () => {
    const room = { part: 'field', name: 'conditions.ambientTemperature', value: '22 °C' } as const;
    const { files, findings } = judgeDraft(session, changed(session, room));
    expect(files[0]?.text).toContain('ambientTemperature: 22 Cel\n');
    expect(findings.map(({ rule }) => rule)).not.toContain('style/unit-spelling');
  });
});

describe('advice while one types', () => {
  const session = sessionOf(ladder);

  it('names the reading without which the interval would be narrowest', () => {
    const { rows } = typedTrial(session, ladder);
    const { name, ...row } = rows[13]!;
    const off = { part: 'row', name, value: { ...row, cells: row.cells.with(-1, '1.140') } } as const;
    const steps = intervalAdvice(session, changed(session, off));
    let step = steps.next();
    while (!step.done) step = steps.next();
    expect(step.value?.widest).toMatchObject({ rows: [name] });
    expect(step.value?.widest?.share).toBeLessThan(0.9);
  });

  it('names the next piece of a flow ladder that is not narrow enough, as `plan --after` does', () => {
    const { head, rows } = typedTrial(session, ladder);
    const few = rows.filter((_, place) => place % 4 === 0);
    const draft = drafted([
      { part: 'head', value: head },
      ...few.map(({ name, ...value }): EntryContent => ({ part: 'row', name, value })),
    ]);
    expect(nextStep(session, draft)).toMatchObject({
      answer: expect.stringMatching(/^Feed /),
      given: [expect.any(String), '400'],
    });
  });

  it('shows what was measured already for the pairing, the newest first', () => {
    const runs = measuredRuns(session, askedFor(ladder));
    expect(runs.map(({ trial }) => trial)).toContain('lantern-stagecraft-pla-230');
    expect(runs.map(({ date }) => date)).toEqual(
      runs
        .map(({ date }) => date)
        .toSorted()
        .toReversed(),
    );
    expect(runs.find(({ trial }) => trial === ladder.id)?.results[0]).toMatch(/^melt flow limit \d/);
  });
});
