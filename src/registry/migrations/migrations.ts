import type { Kind } from '../kind.ts';
import type { Path } from '../shape.ts';
import { toPointer } from '../shape.ts';
import { scaleOfATrial } from './0001-scale-of-a-trial.ts';
import type { Migration } from './migration.ts';

/** Every migration in the order of its number. */
export const migrations: readonly Migration[] = [scaleOfATrial];

/** The migration that knows a place of a document as part of an old shape. */
export function migrationOfPlace(kind: Kind, path: Path): Migration | undefined {
  const pointer = toPointer(path);
  return migrations.find((migration) => migration.kind === kind && toPointer(migration.oldPlace) === pointer);
}
