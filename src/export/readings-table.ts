import { allMethods, methodOf } from '../bench/methods.ts';
import type { Observations } from '../bench/sheet/observations.ts';
import { trialObservations } from '../bench/sheet/trial-observations.ts';
import type { Profile } from '../registry/profile.ts';
import { locate } from '../registry/yaml/yaml-document.ts';
import { wordsOf } from '../text/words.ts';
import type { Dimension } from '../units/dimension.ts';
import { type Column, day, flag, quantity, whole, words } from './column.ts';
import { type ExportedRow, type ExportSource, type ExportTable, refersTo, rowOf } from './export-table.ts';
import { conditionFields } from './quantity-fields.ts';

interface Reading {
  readonly trial: Profile<'trial'>;
  readonly observations: Observations;
  readonly index: number;
  readonly file: string;
  readonly line: number;
}

type Trial = Profile<'trial'>['data'];

const ofTrial = (name: string, description: string, cell: (trial: Trial) => string | undefined) =>
  words<Reading>(name, description, ({ trial }) => cell(trial.data));

/** One row per row of a bench sheet. */
export const readingsTable: ExportTable<Reading> = {
  name: 'readings',
  title: 'Readings',
  description:
    'One row per row of a bench sheet, in canonical units, with the conditions that it was taken under. A column that the method does not read is empty.',
  primaryKey: ['trial_id', 'reading_no'],
  foreignKeys: [refersTo('trials', 'trial_id')],
  columns: [
    words('trial_id', 'Trial', ({ trial }) => trial.id),
    whole('reading_no', 'Place among the readings of the trial, from 1', ({ index }) => index + 1),
    words('file', 'File that it was read from', ({ file }) => file),
    whole('line', 'Line in that file', ({ line }) => line),
    ofTrial('method', 'Bench method', ({ method }) => method),
    day('date', 'Day of the run', ({ trial }) => trial.data.date),
    ofTrial('machine_id', 'Machine', ({ machine }) => machine),
    ofTrial('nozzle_id', 'Nozzle of that machine', ({ nozzle }) => nozzle),
    ofTrial('filament_id', 'Filament', ({ filament }) => filament),
    ofTrial('batch', 'Batch of the filament', ({ batch }) => batch),
    flag('is_simulated', 'Whether no bench has read it', ({ trial }) => trial.data.origin === 'simulated'),
    ...readColumns(),
  ],
};

/** What sheets hold, and what of it or besides a trial states of its conditions: of both, the row of the sheet counts. */
function readColumns(): Column<Reading>[] {
  const read = new Map(allMethods.flatMap(({ columns }) => Object.entries(columns)));
  const conditions = conditionFields();
  const all = new Map<string, Dimension>([...read, ...conditions]);
  return [...all].map(([name, dimension]) => {
    const ofRun = conditions.has(name);
    const where = ofRun ? (read.has(name) ? ' of the reading, else of the run' : ' of the run') : '';
    return quantity(name, dimension, `${wordsOf(name)}${where}`, ({ observations, index, trial }) => {
      const given: Readonly<Record<string, number | undefined>> = trial.data.conditions;
      return observations.columns[name]?.[index] ?? (ofRun ? given[name] : null);
    });
  });
}

/** The readings of every trial whose sheet can be read, sorted by trial. */
export function* readingRows({ registry }: ExportSource): Generator<ExportedRow> {
  for (const trial of registry.trial.values()) {
    const observations = trialObservations(trial, methodOf(trial.data.method));
    if (!observations.ok) continue;
    for (const [index, row] of observations.value.rows.entries()) {
      const place = placeOf(trial, row);
      yield rowOf(readingsTable, { trial, observations: observations.value, index, ...place });
    }
  }
}

/** Where a row stands: in the sheet beside the trial, or among the rows of the trial itself. */
function placeOf(trial: Profile<'trial'>, row: number): Pick<Reading, 'file' | 'line'> {
  const { attachment, originalPath, yaml, source } = trial;
  if (attachment?.ok) return { file: attachment.source.relativePath, line: row };
  const path = originalPath(['observations', 'rows', row - 1]);
  return { file: source.relativePath, line: locate(yaml, path, 'value').line };
}
