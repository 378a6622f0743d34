import { readingsDigest } from '../bench/adopt/readings-digest.ts';
import { methodOf } from '../bench/methods.ts';
import type { TrialResults } from '../bench/reduction.ts';
import { trialObservations } from '../bench/sheet/trial-observations.ts';
import type { Profile } from '../registry/profile.ts';
import { problemLine } from '../text/problem-text.ts';
import { day, figure, flag, whole, words } from './column.ts';
import { type ExportedRow, type ExportSource, type ExportTable, rowOf } from './export-table.ts';
import { factColumns } from './quantity-fields.ts';

interface ExportedTrial {
  readonly trial: Profile<'trial'>;
  /** Null where the sheet cannot be read. */
  readonly readings: number | null;
  readonly reduced: TrialResults | null;
  /** Why it cannot be reduced. */
  readonly problem: string | null;
}

type Trial = Profile<'trial'>['data'];

const stated = (name: string, description: string, cell: (trial: Trial) => string | undefined) =>
  words<ExportedTrial>(name, description, ({ trial }) => cell(trial.data));

/** One row per bench run. */
export const trialsTable: ExportTable<ExportedTrial> = {
  name: 'trials',
  title: 'Trials',
  description: 'One row per bench run: how, with what and under which conditions it was run.',
  primaryKey: ['trial_id'],
  foreignKeys: [],
  columns: [
    words('trial_id', 'Trial', ({ trial }) => trial.id),
    stated('method', 'Bench method', ({ method }) => method),
    flag('is_simulated', 'Whether no bench has run it', ({ trial }) => trial.data.origin === 'simulated'),
    day('date', 'Day of the run', ({ trial }) => trial.data.date),
    stated('operator', 'Who ran it', ({ operator }) => operator),
    stated('machine_id', 'Machine', ({ machine }) => machine),
    stated('nozzle_id', 'Nozzle of that machine', ({ nozzle }) => nozzle),
    stated('filament_id', 'Filament', ({ filament }) => filament),
    stated('batch', 'Batch of the filament', ({ batch }) => batch),
    stated('firmware', 'Version of the controller software', ({ firmware }) => firmware),
    stated('job_id', 'Job that was printed', ({ job }) => job),
    stated('checked_part', 'Part whose set point was checked', ({ checkedPart }) => checkedPart),
    ...factColumns<ExportedTrial>('trial', ({ trial }) => trial.data),
    figure('accepted_grade', 'Lowest grade that passes', ({ trial }) => trial.data.acceptedGrade),
    whole('readings', 'Number of readings; empty where the sheet cannot be read', ({ readings }) => readings),
    words(
      'readings_digest',
      'Digest of the readings and of what their reduction takes from the trial: limits that were adopted from them carry it',
      ({ trial }) => readingsDigest(trial),
    ),
    words('warnings', 'What the reduction warns of, a line each', ({ reduced }) => lines(reduced?.warnings)),
    words('problem', 'Why the readings give no results', ({ problem }) => problem),
    words('file', 'File of the trial', ({ trial }) => trial.source.relativePath),
    words('file_sha256', 'SHA-256 of that file with LF line ends', ({ trial }) => trial.source.digest),
    words('sheet_file', 'File of the readings, where they stand beside the trial', ({ trial }) =>
      trial.attachment?.ok ? trial.attachment.source.relativePath : null,
    ),
    words('sheet_sha256', 'SHA-256 of that file with LF line ends', ({ trial }) =>
      trial.attachment?.ok ? trial.attachment.source.digest : null,
    ),
  ],
};

function lines(texts: readonly string[] = []): string | null {
  return texts.length === 0 ? null : texts.join('\n');
}

/** Every trial, in the order of its files. */
export function* trialRows({ registry, reduce }: ExportSource): Generator<ExportedRow> {
  for (const trial of registry.trial.values()) {
    const observations = trialObservations(trial, methodOf(trial.data.method));
    const reduced = reduce(trial.id);
    yield rowOf(trialsTable, {
      trial,
      readings: observations.ok ? observations.value.rows.length : null,
      reduced: reduced.ok ? reduced.value : null,
      problem: reduced.ok ? null : reduced.error.map(problemLine).join('\n'),
    });
  }
}
