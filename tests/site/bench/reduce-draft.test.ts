/** @module-tag long */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { BenchProblem } from '../../../src/bench/bench-problem.ts';
import { flowLadder } from '../../../src/bench/flow-ladder/flow-ladder.ts';
import { methodOf } from '../../../src/bench/methods.ts';
import { reduceTrial } from '../../../src/bench/reduce-trial.ts';
import type { Reduction } from '../../../src/bench/reduction.ts';
import { readBenchSheet } from '../../../src/bench/sheet/bench-sheet.ts';
import { resultTexts } from '../../../src/report/reduction/reduction-document.ts';
import type { Result } from '../../../src/result.ts';
import type { EntryContent } from '../../../src/site/bench/draft.ts';
import { entriesOfSheet } from '../../../src/site/bench/dropped-sheet.ts';
import { reduceDraft } from '../../../src/site/bench/reduce-draft.ts';
import { inPrint } from '../../../src/units/in-print.ts';
import { askedFor, demo, demoSession, drafted, plannedDraft, typedTrial } from './demo-bench.ts';

/** What `reduce` prints of a reduction: the results with their intervals, and the warnings. */
function printed(reduced: Result<Reduction, readonly BenchProblem[]>) {
  if (!reduced.ok) throw new Error(JSON.stringify(reduced.error));
  const { method, results, warnings } = reduced.value;
  const words = methodOf(method);
  const texts = results.map((result) => resultTexts(result, words.results[result.quantity], words.openWords));
  return {
    results: texts.map(({ name, value, interval, remark }) => ({
      ...{ name: inPrint(name), value: inPrint(value) },
      ...{ interval: inPrint(interval), remark: inPrint(remark) },
    })),
    warnings: warnings.map(inPrint),
    problems: [],
  };
}

describe('what the bench page reduces is as printed by `reduce`:', () => {
  it.each([...demo.trial.keys()])('the trial %s, typed', (id) => {
    const trial = demo.trial.get(id)!;
    const session = demoSession(trial.data.machine ?? 'brackwater/lantern', trial.data.filament);
    const reduced = reduceDraft(session, typedTrial(session, trial));
    expect(reduced).toMatchObject(printed(reduceTrial(demo, id)));
    expect(reduced.answer).toMatch(/\(simulated readings\)\.$/);
  });

  const cases = new URL('../../bench/cases/', import.meta.url);
  const truths = ['truth.json', 'hard/truth.json'].flatMap((file) =>
    (JSON.parse(readFileSync(new URL(file, cases), 'utf8')) as SimulatedTruth[]).map((truth) => ({
      ...truth,
      sheet: `${file.replace('truth.json', '')}${truth.id}.csv`,
    })),
  );

  it.each(truths)('the simulated ladder $id, dropped', ({ sheet, tolerance, scaleResolution }) => {
    const session = demoSession('brackwater/lantern', 'ashgrove/stagecraft-pla');
    const text = readFileSync(new URL(sheet, cases), 'utf8');
    const planned = plannedDraft(session, askedFor(demo.trial.get('lantern-stagecraft-pla-230')!));
    const facts: EntryContent[] = [
      { part: 'field', name: 'acceptedDeficit', value: `${Number((100 * tolerance).toFixed(6))} %` },
      { part: 'field', name: 'scale.resolution', value: `${scaleResolution} g` },
    ];
    const dropped = entriesOfSheet(drafted(planned), new TextEncoder().encode(text));
    const observations = readBenchSheet(text, flowLadder);
    if (!dropped.ok || !observations.ok) throw new Error(sheet);
    const run = {
      ...{ filamentDiameter: 1.75, density: 1.24e-3 },
      ...{ acceptedDeficit: tolerance, massResolution: scaleResolution },
    };
    expect(reduceDraft(session, drafted(planned, facts, dropped.value))).toMatchObject(
      printed(flowLadder.reduce(observations.value, run)),
    );
  });
});

interface SimulatedTruth {
  readonly id: string;
  readonly tolerance: number;
  readonly scaleResolution: number;
}

describe('a run that has begun', () => {
  const session = demoSession('brackwater/lantern', 'ashgrove/stagecraft-pla');
  const planned = plannedDraft(session, askedFor(demo.trial.get('lantern-stagecraft-pla-230')!));

  it('has no result before anything is typed', () => {
    expect(reduceDraft(session, drafted(planned))).toMatchObject({ count: 0, answer: null, problems: [] });
  });

  it('says what is missing while there are too few readings', () => {
    const row = planned.find((entry) => entry.part === 'row')!;
    const cells = row.value.cells.map((cell) => (cell === '' ? '3,28' : cell));
    const draft = drafted(planned, [{ ...row, value: { ...row.value, cells } }]);
    const { count, problems } = reduceDraft(session, draft);
    expect(count).toBe(1);
    expect(problems.map(({ text }) => text).join()).toMatch(/a limit needs 4 different ones/);
  });

  it('tells a row that is not complete, and leaves it out', () => {
    const trial = demo.trial.get('lantern-stagecraft-pla-230')!;
    const whole = typedTrial(session, trial);
    const { name, ...last } = whole.rows.at(-1)!;
    const open = { ...last, cells: last.cells.with(-1, 'two') };
    const head: EntryContent = { part: 'head', value: whole.head };
    const rows = whole.rows.map(
      ({ name: each, ...value }): EntryContent => ({ part: 'row', name: each, value }),
    );
    const draft = drafted([head, ...rows], [{ part: 'row', name, value: open }]);
    expect(reduceDraft(session, draft)).toMatchObject({ count: whole.rows.length - 1, open: [name] });
  });
});
