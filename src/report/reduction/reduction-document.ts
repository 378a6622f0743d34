import { methodOf } from '../../bench/methods.ts';
import type { ReducedResult, Reduction } from '../../bench/reduction.ts';
import type { OpenWords, ResultWords } from '../../bench/result-words.ts';
import { tableCautions } from '../../knowledge/cautions.ts';
import { type Origin, originBlocks } from '../../knowledge/origin.ts';
import type { Trial } from '../../registry/generated/documents.ts';
import {
  type Column,
  cautions,
  type Document,
  type Fact,
  facts,
  type Table,
  table,
  warnings,
} from '../../text/document.ts';
import { capitalised, wordsOf } from '../../text/words.ts';
import { formatQuantity, formatRange } from '../../units/format-quantity.ts';
import { type SheetReading, sheetFacts } from './sheet-facts.ts';

/** What a reduction is of. */
export interface ReductionHeading {
  /** Id of the trial, or path of the sheet. */
  readonly title: string;
  /** The trial, or null for a bare sheet. */
  readonly subject: Trial | null;
  /** What behind it is simulated or invented; left out where that is not known, as of a bare sheet. */
  readonly origin?: Origin;
  /** How the sheet was understood, where that is to be shown. */
  readonly sheet?: SheetReading;
}

/** What a reduction found, for people: the first result in a sentence, then all of them with what they hold for. */
export function reductionDocument(
  reduction: Reduction,
  { title, subject, origin, sheet }: ReductionHeading,
): Document {
  const method = methodOf(reduction.method);
  const results = reduction.results.map((result) =>
    resultTexts(result, method.results[result.quantity], method.openWords),
  );
  const [first] = results;
  return {
    title: `${title}: ${wordsOf(reduction.method)}`,
    answer: first === undefined ? 'No result.' : answerText(first, subject),
    blocks: [
      ...(origin === undefined ? [] : originBlocks(origin)),
      ...(subject === null ? [] : [facts(...subjectFacts(subject))]),
      ...(sheet === undefined ? [] : [facts(...sheetFacts(sheet))]),
      resultTable(results),
      warnings(reduction.warnings),
      cautions([...tableCautions, ...(method.cautions ?? [])]),
    ],
  };
}

function resultTable(results: readonly ResultTexts[]): Table {
  const has = {
    interval: results.some(({ interval }) => interval !== ''),
    remark: results.some(({ remark }) => remark !== ''),
  };
  const columns: Column[] = [
    { heading: 'result', align: 'left', namesRow: true },
    { heading: 'value', align: 'right' },
    ...(has.interval ? [{ heading: '95 % interval', align: 'right' } as const] : []),
    ...(has.remark ? [{ heading: 'remark', align: 'left', wraps: true } as const] : []),
  ];
  const rows = results.map(({ name, value, interval, remark }) => [
    name,
    value,
    ...(has.interval ? [interval] : []),
    ...(has.remark ? [remark] : []),
  ]);
  return table(columns, rows);
}

function subjectFacts(trial: Trial): Fact[] {
  return [
    ['pairing', pairingText(trial)],
    ['readings', `${isSimulated(trial) ? 'simulated' : 'from the bench'}, ${trial.date}`],
  ];
}

function isSimulated({ origin }: Trial): boolean {
  return origin === 'simulated';
}

function pairingText({ filament, machine, nozzle, conditions, job }: Trial): string {
  const temperature = conditions.nozzleTemperature ?? conditions.dryingTemperature;
  return [
    machine === undefined ? filament : `${filament} on ${machine}`,
    ...(nozzle === undefined ? [] : [`nozzle ${nozzle}`]),
    ...(temperature === undefined ? [] : [formatQuantity(temperature, 'temperature')]),
    ...(job === undefined ? [] : [`job ${job}`]),
  ].join(', ');
}

/** A result in words; texts that say nothing are empty. */
interface ResultTexts {
  /** `melt flow limit`, `contour speed limit at 5000 mm/s2`. */
  readonly name: string;
  readonly value: string;
  readonly interval: string;
  /** Why there is no interval, or what the value means in other words. */
  readonly remark: string;
}

function answerText({ name, value, interval, remark }: ResultTexts, subject: Trial | null): string {
  const found = [value, ...(interval === '' ? [] : [`95 % interval ${interval}`])].join(', ');
  const reason = remark === '' ? '' : `: ${remark}`;
  const origin = subject !== null && isSimulated(subject) ? ' (simulated readings)' : '';
  return `${capitalised(name)} ${found}${reason}${origin}.`;
}

/** A result of a method in words. */
export function resultTexts(
  { quantity, dimension, value, interval: { low, high }, censored, at }: ReducedResult,
  words: ResultWords | undefined,
  open: OpenWords,
): ResultTexts {
  const format = {
    significantDigits: words?.digits ?? 3,
    ...(words?.unit !== undefined && { unit: words.unit }),
  };
  const place = at === undefined ? '' : ` at ${formatQuantity(at.acceleration, 'acceleration')}`;
  const number = formatQuantity(value, dimension, format);
  const found = { name: `${words?.name ?? wordsOf(quantity)}${place}`, interval: '' };
  if (censored === 'above') return { ...found, value: `at least ${number}`, remark: open.above };
  if (censored === 'below') return { ...found, value: `below ${number}`, remark: open.below };
  return {
    ...found,
    value: number,
    interval: low === null || high === null ? '' : formatRange(low, high, dimension, format),
    remark: words?.inOtherWords?.(value) ?? '',
  };
}
