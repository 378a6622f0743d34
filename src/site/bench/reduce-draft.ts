import type { BenchProblem } from '../../bench/bench-problem.ts';
import { methodOf } from '../../bench/methods.ts';
import { reduceTrial } from '../../bench/reduce-trial.ts';
import type { Reduction } from '../../bench/reduction.ts';
import { drawPlot } from '../../plots/draw-plot.ts';
import type { Plot } from '../../plots/plot.ts';
import { formatPlotAsCsv } from '../../plots/plot-as-csv.ts';
import type { Profile } from '../../registry/profile.ts';
import { reductionDocument, resultTexts } from '../../report/reduction/reduction-document.ts';
import { reductionPlot } from '../../report/reduction/reduction-plot.ts';
import { inPrint } from '../../units/in-print.ts';
import type { Draft } from './draft.ts';
import { trialFiles, trialIn } from './draft-files.ts';
import { sortedRows } from './draft-sheet.ts';
import type { BenchSession } from './session.ts';

/** A result in words, as `reduce` prints it. */
interface PrintedResult {
  readonly name: string;
  readonly value: string;
  readonly interval: string;
  readonly remark: string;
}

/** Something to be told of a row, or of all of them. */
export interface RowRemark {
  /** Name of the row; null where it is about more than one. */
  readonly row: string | null;
  readonly text: string;
}

/** What the readings that were typed so far give. */
export interface ReducedDraft {
  /** Rows that count. */
  readonly count: number;
  /** Names of the rows that lack something. */
  readonly open: readonly string[];
  /** The sentence of `reduce`; null where there is no result. */
  readonly answer: string | null;
  readonly results: readonly PrintedResult[];
  readonly warnings: readonly string[];
  /** Why there is no result yet. */
  readonly problems: readonly RowRemark[];
  readonly plot: { readonly svg: string; readonly csv: string } | null;
}

/** Reduces what was typed by the module that `meltbounds reduce` runs. */
export function reduceDraft(session: BenchSession, draft: Draft): ReducedDraft {
  const files = trialFiles(session, draft);
  const { complete, open } = sortedRows(draft);
  const found = { count: complete.length, open: open.map(({ name }) => name) };
  const nothing = { answer: null, results: [], warnings: [], problems: [], plot: null };
  if (complete.length === 0) return { ...found, ...nothing };
  const { registry } = session.withFiles([files.trial, files.sheet]);
  const trial = trialIn(registry, files);
  const reduced = trial === undefined ? null : reduceTrial(registry, trial.id);
  if (trial === undefined || reduced === null) return { ...found, ...nothing, problems: [unreadable] };
  if (!reduced.ok) {
    return { ...found, ...nothing, problems: reduced.error.map((each) => remarkOf(each, files.rows)) };
  }
  return { ...found, problems: [], ...reducedTexts(reduced.value, trial) };
}

const unreadable: RowRemark = {
  row: null,
  text: 'The facts of the run are of a form that cannot be read. What is wrong stands under "What `check` would say".',
};

function reducedTexts(reduction: Reduction, trial: Profile<'trial'>) {
  const method = methodOf(reduction.method);
  const { answer } = reductionDocument(reduction, { title: trial.id, subject: trial.data });
  const plot = reductionPlot(reduction, trial.id, trial.data.events ?? []);
  return {
    answer: typeof answer === 'string' ? inPrint(answer) : null,
    results: reduction.results.map((result) => {
      const { name, value, interval, remark } = resultTexts(
        result,
        method.results[result.quantity],
        method.openWords,
      );
      return {
        name: inPrint(name),
        value: inPrint(value),
        interval: inPrint(interval),
        remark: inPrint(remark),
      };
    }),
    warnings: reduction.warnings.map(inPrint),
    plot: plot === null ? null : drawn(plot),
  };
}

function drawn(plot: Plot): { svg: string; csv: string } {
  return { svg: drawPlot(plot), csv: formatPlotAsCsv(plot) };
}

/** Below the header of the sheet the rows begin on line 2. */
export function rowOfLine(rows: readonly string[], line: number): string | null {
  return rows[line - 2] ?? null;
}

/** A problem of the readings as it is told beside its row. */
function remarkOf({ message, help, row }: BenchProblem, rows: readonly string[]): RowRemark {
  return { row: row === undefined ? null : rowOfLine(rows, row), text: inPrint(`${message}; ${help}.`) };
}
