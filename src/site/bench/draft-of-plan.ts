import type { PlanColumn } from '../../bench/layout/run-layout.ts';
import type { Method } from '../../bench/method.ts';
import { methodOf } from '../../bench/methods.ts';
import type { BenchPlan } from '../../decisions/plan/bench-plan.ts';
import { dimensionInfo } from '../../units/dimension.ts';
import { type DraftColumn, type DraftField, type EntryContent, type RunAsked, rowName } from './draft.ts';
import { fieldsOfLines } from './plan-fields.ts';

/** The entries of a new draft: what the plan lays out, with nothing read yet. */
export function entriesOfPlan(plan: BenchPlan, asked: RunAsked): EntryContent[] {
  const method = methodOf(plan.method);
  const read = plan.read.map((column) => chosenColumn(column, method, asked.read));
  const columns = [
    ...plan.given.map((column) => draftColumn(column, method, true)),
    ...read.map((column) => draftColumn(column, method, false)),
  ];
  const { title, hints, trial, date, rows, repeats } = plan;
  const named: DraftField[] = [
    { path: 'id', preset: trial.id, example: '', isNumber: false, isFixed: false },
    { path: 'date', preset: date, example: '', isNumber: false, isFixed: false },
    { path: 'origin', preset: 'bench', example: '', isNumber: false, isFixed: true },
  ];
  const isGraded = read.some(({ name }) => name === 'grade');
  const fields = fieldsOfLines(trial.lines, method.facts).filter(
    ({ path }) => path !== 'acceptedGrade' || isGraded,
  );
  const head = {
    ...{ title, asked, columns, hints },
    fields: [...named, ...fields],
  };
  const settings = rows.flatMap((row) => Array.from({ length: repeats }, () => row));
  return [
    { part: 'head', value: head },
    ...settings.map(({ given, hints: texts }, place): EntryContent => {
      const cells = [...given.map(String), ...read.map(() => '')];
      return {
        part: 'row',
        name: rowName(place),
        value: { cells, hints: texts, note: '', isRemoved: false },
      };
    }),
  ];
}

/** The columns that may stand for one that a plan reads, itself among them; one where there is no choice. */
function readChoices({ eitherOf = [], read }: Method, column: string): readonly string[] {
  const group = eitherOf.find((names) => names.includes(column)) ?? [column];
  return group.filter((name) => read.includes(name));
}

function chosenColumn(planned: PlanColumn, method: Method, asked: string | null): PlanColumn {
  const dimension = method.columns[asked ?? ''];
  if (asked === null || dimension === undefined || asked === planned.name) return planned;
  if (!readChoices(method, planned.name).includes(asked)) return planned;
  return { name: asked, unit: dimensionInfo[dimension].usualUnit };
}

function draftColumn({ name, unit }: PlanColumn, { optional = [] }: Method, isGiven: boolean): DraftColumn {
  return { name, unit, isGiven, isOptional: optional.includes(name) };
}
