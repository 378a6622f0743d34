import type { Profile } from '../../registry/profile.ts';
import type { SourceText } from '../../registry/source-text.ts';
import type { CubicMillimetresPerSecond, Grams, Millimetres } from '../../units/canonical.ts';
import { usualMassResolution } from '../facts/instrument-facts.ts';
import { trialObservations } from '../sheet/trial-observations.ts';
import { flowLadder } from './flow-ladder.ts';

/** One reading of a ladder as a rule judges it. */
export interface LadderReading {
  readonly flow: CubicMillimetresPerSecond;
  readonly feedLength: Millimetres;
  readonly mass: Grams;
  /** The line of the file, or the place in the list counted from 1. */
  readonly row: number;
}

/** The readings of a flow ladder in the order in which they were written; none of other methods or where they cannot be read. */
export function ladderReadings(trial: Profile<'trial'>): readonly LadderReading[] {
  if (trial.data.method !== 'flowLadder') return [];
  const read = trialObservations(trial, flowLadder);
  if (!read.ok) return [];
  const { commandedFlow = [], feedLength = [], extrudedMass = [] } = read.value.columns;
  return read.value.rows.map((row, index) => ({
    flow: commandedFlow[index] ?? Number.NaN,
    feedLength: feedLength[index] ?? Number.NaN,
    mass: extrudedMass[index] ?? Number.NaN,
    row,
  }));
}

/** Step of the scale, in g, that a trial was weighed with; the usual one where it names none. */
export function massResolution({ data }: Profile<'trial'>): Grams {
  return data.scale?.resolution ?? usualMassResolution;
}

/** Where a reading stands: a place in the trial, or a line of the sheet beside it. */
export function placeOfReading(
  { data, attachment }: Profile<'trial'>,
  { row }: { readonly row: number },
): { path: (string | number)[]; elsewhere?: { source: SourceText; line: number } } {
  if (data.observations.rows !== undefined) return { path: ['observations', 'rows', row - 1] };
  const path = ['observations', 'file'];
  return attachment?.ok ? { path, elsewhere: { source: attachment.source, line: row } } : { path };
}
