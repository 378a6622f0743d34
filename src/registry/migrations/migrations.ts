import type { Kind } from '../kind.ts';
import type { Path } from '../shape.ts';
import { toPointer } from '../shape.ts';
import { scaleOfATrial } from './0001-scale-of-a-trial.ts';
import { codesOfRules } from './0002-codes-of-rules.ts';
import { datesAsText } from './0003-dates-as-text.ts';
import type { Migration } from './migration.ts';

/** Every migration in the order of its number. */
export const migrations: readonly Migration[] = [scaleOfATrial, codesOfRules, datesAsText];

/** The migration that knows a place of a document as a key that is gone. */
export function migrationOfPlace(kind: Kind, path: Path): Migration | undefined {
  const pointer = toPointer(path);
  return migrations.find(({ oldKey }) => oldKey?.kind === kind && toPointer(oldKey.place) === pointer);
}
