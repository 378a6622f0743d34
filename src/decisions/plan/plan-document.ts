import type { PlanColumn } from '../../bench/layout/run-layout.ts';
import { originBlocks } from '../../knowledge/origin.ts';
import { quirkSections } from '../../knowledge/quirk-words.ts';
import {
  type Block,
  type Column,
  cautions,
  type Document,
  facts,
  leftColumns,
  list,
  paragraph,
  section,
  table,
  warnings,
} from '../../text/document.ts';
import { capitalised, counted, wordsOf } from '../../text/words.ts';
import { printedUnit } from '../../units/print-symbols.ts';
import type { BenchPlan } from './bench-plan.ts';

/** A plan for a terminal: what to expect, the settings step by step, then why and how. */
export function planDocument(plan: BenchPlan): Document {
  const { read, repeats } = plan;
  const readings = read.map(readingText).join(', ');
  return {
    ...heading(plan),
    blocks: [
      ...knownBlocks(plan),
      ...(plan.rows.length === 0
        ? []
        : [
            paragraph(`Read ${readings}, ${timesText(repeats)} in each row:`),
            table(settingColumns(plan), settingRows(plan)),
          ]),
      ...sections(plan),
      paragraph(nextText(plan)),
      ...quirkSections(plan.quirks),
      cautions(plan.cautions),
    ],
  };
}

/** What to do once the plan is right. */
function nextText({ nextStep, trial: { id } }: BenchPlan): string {
  if (nextStep !== undefined) return nextStep;
  return `Next: the same command with \`--out FOLDER\` writes the empty trial, the sheet for its readings and this plan to print; once they are in the registry, \`meltbounds reduce ${id}\` gives the result.`;
}

/** What must be known before anything is heated up, so that it stands at the head. */
function knownBlocks({ origin, warnings: known }: BenchPlan): Block[] {
  return [...originBlocks(origin), warnings(known.map(({ text }) => text))];
}

function readingText({ name, unit }: PlanColumn): string {
  const printed = printedUnit(unit);
  return printed === '' ? wordsOf(name) : `${wordsOf(name)} in ${printed}`;
}

/** `once`, `twice`, `3 times`. */
function timesText(count: number): string {
  return ['never', 'once', 'twice'][count] ?? `${count} times`;
}

/** A line to write on. */
const dots = '.'.repeat(24);

/** A plan as a bench sheet to print and fill in by hand. */
export function planSheetDocument(plan: BenchPlan): Document {
  const toRead = toReadColumns(plan);
  const empty = toRead.map(() => '');
  return {
    ...heading(plan),
    blocks: [
      ...knownBlocks(plan),
      paragraph(`Planned ${plan.date} for the trial ${plan.trial.id}.`),
      facts(['Run by', dots], ['On', dots], ['Batch', dots], ['Room', `${dots} °C, ${dots} % humidity`]),
      ...sections(plan),
      section('Readings', [
        table(
          [...settingColumns(plan), ...toRead],
          settingRows(plan).map((row) => [...row, ...empty]),
        ),
        facts(['Stopped or ground at', dots], ['Because of', dots]),
      ]),
      ...quirkSections(plan.quirks),
      cautions(plan.cautions),
    ],
  };
}

function heading(plan: BenchPlan): Pick<Document, 'title' | 'answer'> {
  return { title: plan.title, answer: answerText(plan) };
}

/** `Commanded flow 16..40 mm3/s in 13 rows, each read twice.` */
function answerText({ answer, given: [column], rows, repeats }: BenchPlan): string {
  if (answer !== undefined) return answer;
  const settings = rows.flatMap(({ given: [setting] }) => setting ?? []);
  const extent = `in ${counted(rows.length, 'row')}, each read ${timesText(repeats)}.`;
  if (column === undefined || settings.length === 0) return capitalised(extent);
  const [low, high] = [Math.min(...settings), Math.max(...settings)];
  const range = low === high ? `${low}` : `${low}..${high}`;
  return `${capitalised(wordsOf(column.name))} ${range} ${column.unit} ${extent}`;
}

function sections({ sections: planned }: BenchPlan): Block[] {
  return planned.map(({ heading: text, items }) => section(text, [list(items)]));
}

/** The columns that the plan sets, and what helps to set them. */
function settingColumns({ given, hints }: BenchPlan): Column[] {
  return [...given.map((column) => planColumn(column)), ...hints.map(hintColumn)];
}

function settingRows({ rows }: BenchPlan): (string | number)[][] {
  return rows.map(({ given, hints }) => [...given, ...hints]);
}

function planColumn({ name, unit }: PlanColumn, repeat?: number): Column {
  const number = repeat === undefined ? '' : `, ${repeat}`;
  return { heading: `${wordsOf(name)}${number}`, unit, align: 'right' };
}

function hintColumn(hint: string): Column {
  return { heading: hint, align: 'right' };
}

/** A column for each reading, to write into, and one for what was seen. */
function toReadColumns({ read, repeats }: BenchPlan): Column[] {
  const numbers = Array.from({ length: repeats }, (_, index) => index + 1);
  const columns = numbers.flatMap((number) =>
    read.map((column) => planColumn(column, repeats > 1 ? number : undefined)),
  );
  return [...columns, ...leftColumns('what was seen')];
}
