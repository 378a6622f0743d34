import { methodOf } from '../../bench/methods.ts';
import { trialObservations } from '../../bench/sheet/trial-observations.ts';
import type { Profile } from '../../registry/profile.ts';
import { formatCsv } from '../../text/csv.ts';
import { type Table, table } from '../../text/document.ts';
import { wordsOf } from '../../text/words.ts';
import { type Dimension, dimensionInfo } from '../../units/dimension.ts';
import { toUnit } from '../../units/format-quantity.ts';

interface ReadColumn {
  readonly name: string;
  readonly unit: string;
  readonly numbers: readonly number[];
}

/** The columns of a trial's readings in the usual units; null where they cannot be read. */
export function readingColumns(trial: Profile<'trial'>): ReadColumn[] | null {
  const method = methodOf(trial.data.method);
  const read = trialObservations(trial, method);
  if (!read.ok) return null;
  return Object.entries(read.value.columns).map(([name, numbers]) => {
    const dimension: Dimension = method.columns[name] ?? 'count';
    const unit = dimensionInfo[dimension].usualUnit;
    return { name, unit, numbers: numbers.map((number) => toUnit(number, dimension, unit)) };
  });
}

export function readingsTable(columns: readonly ReadColumn[]): Table {
  return table(
    columns.map(({ name, unit }) => ({ heading: wordsOf(name), unit, align: 'right' })),
    rowsOf(columns),
    { caption: 'Every reading, in the order of the run', name: 'readings' },
  );
}

/** The readings as a sheet that `reduce` reads. */
export function readingsCsv(columns: readonly ReadColumn[]): string {
  return formatCsv([columns.map(({ name, unit }) => `${name} [${unit}]`), ...rowsOf(columns)]);
}

function rowsOf(columns: readonly ReadColumn[]): number[][] {
  const [first] = columns;
  return (first?.numbers ?? []).map((_, row) => columns.map(({ numbers }) => numbers[row] ?? Number.NaN));
}
