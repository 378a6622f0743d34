import type { Statement } from '../registry/generated/documents.ts';
import type { Registry } from '../registry/registry.ts';

/** Whether a statement is measured and its trial is there to be judged in its place. */
export function restsOnTrial({ basis, evidence }: Statement<unknown>, registry: Registry): boolean {
  return basis === 'measured' && evidence !== undefined && registry.trial.has(evidence);
}
