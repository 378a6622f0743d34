import type { BenchProblem } from '../../src/bench/bench-problem.ts';
import { fittingMethod } from '../../src/bench/fitting-method.ts';
import type { Method } from '../../src/bench/method.ts';
import { methodNames } from '../../src/bench/method-facts.ts';
import { type ReadSheet, readSheetTable } from '../../src/bench/sheet/bench-sheet.ts';
import { readSheetText } from '../../src/bench/sheet/sheet-table.ts';
import { formatReductionAsJson } from '../../src/report/reduction/reduction-as-json.ts';
import { reductionDocument } from '../../src/report/reduction/reduction-document.ts';
import { formatDocument } from '../../src/units/format-document.ts';
import { exampleRuns, exampleSheet } from '../../tests/bench/method-examples.ts';
import { type FuzzArea, must, mustBeSafe } from './fuzz-area.ts';

const sheets = methodNames.map(exampleSheet);
const seeds = [
  ...sheets,
  ...sheets.map((sheet) => sheet.replaceAll(',', ';').replaceAll('.', ',')),
  ...sheets.map((sheet) => `sep=\t\r\n${sheet.replaceAll(',', '\t').replaceAll('\n', '\r\n')}`),
];

/** A sheet that could be read, and the method whose columns it has. */
function readSheet(text: string): { readonly method: Method; readonly sheet: ReadSheet } | null {
  const table = readSheetText(text);
  if (!table.ok) return refusedWith(table.error);
  const fitting = fittingMethod(table.value);
  if (!fitting.ok) return null;
  if (!fitting.value.ok) return refusedWith(fitting.value.error);
  const method = fitting.value.value;
  const sheet = readSheetTable(table.value, method);
  return sheet.ok ? { method, sheet: sheet.value } : refusedWith(sheet.error);
}

function refusedWith(problems: readonly BenchProblem[]): null {
  must(problems.length > 0, 'refused without a problem');
  for (const { message, help } of problems) {
    must(message.length < 2000 && help.length < 2000, 'a message without an end');
    mustBeSafe(`${message} ${help}`);
  }
  return null;
}

/** A sheet by itself. */
export const sheetArea: FuzzArea = {
  name: 'sheets',
  share: 0.2,
  seeds,
  take: (text) => {
    const read = readSheet(text);
    if (read === null) return false;
    const { columns, rows } = read.sheet.observations;
    must(rows.length > 0, 'a sheet without rows was taken');
    for (const [name, values] of Object.entries(columns)) {
      must(values.length === rows.length, `${name} has ${values.length} values in ${rows.length} rows`);
      must(values.every(Number.isFinite), `${name} has a value that is no number`);
    }
    return true;
  },
};

/** What becomes of the readings of a sheet: reduced, doubted and written down. */
export const readingArea: FuzzArea = {
  name: 'readings',
  share: 0.015,
  seeds: sheets,
  take: (text) => {
    const read = readSheet(text);
    if (read === null) return false;
    const { method, sheet } = read;
    const run = exampleRuns[method.method];
    const reduced = method.reduce(sheet.observations, run);
    if (!reduced.ok) return refusedWith(reduced.error) !== null;
    method.doubtful(sheet.observations, run);
    const heading = { title: 'sheet.csv', subject: null, events: [] };
    mustBeSafe(formatDocument(reductionDocument(reduced.value, heading), 'text', { colour: false }));
    const written = formatReductionAsJson(reduced.value, undefined, undefined);
    must(!/NaN|Infinity|undefined/.test(written), 'a result is no number');
    JSON.parse(written);
    return true;
  },
};
