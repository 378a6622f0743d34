import { isSimulated } from '../../knowledge/origin.ts';
import type { Statement } from '../../registry/generated/documents.ts';
import type { Registry } from '../../registry/registry.ts';
import type { Known } from './job-estimate.ts';

/** What a statement says, with its basis; null where nothing is stated. */
export function knownValue<Value>(
  statement: Statement<Value> | null,
  registry: Registry,
): Known<Value> | null {
  if (statement === null) return null;
  const { value, basis } = statement;
  return { value, basis, isSimulated: isSimulated(statement, registry) };
}
