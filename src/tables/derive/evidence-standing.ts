import type { EvidenceContext } from '../../evidence/evidence-context.ts';
import { type EvidenceFault, standingOf } from '../../evidence/standing.ts';
import { standingText } from '../../evidence/standing-text.ts';
import { toPointer } from '../../registry/shape.ts';
import { statementsOf } from '../../registry/statement.ts';
import type { RowFlag } from './row-flag.ts';
import type { SourcedValue } from './sourced-value.ts';

/** What is wrong with the evidence of a sourced value, or was until somebody acknowledged it. */
export interface SourcedValueFault {
  readonly sourcedValue: SourcedValue;
  readonly fault: EvidenceFault;
  readonly flag: Extract<RowFlag, 'unsupported' | 'stale' | 'acknowledged'>;
}

/** What is known against the evidence of the sourced values of a table. Only those trials are reduced that they name. */
export function evidenceFaults(
  sourcedValues: readonly SourcedValue[],
  context: EvidenceContext,
): SourcedValueFault[] {
  return sourcedValues
    .filter(({ basis }) => basis !== null)
    .flatMap((sourcedValue) =>
      faultsOf(sourcedValue, context).map((fault) => ({ sourcedValue, fault, flag: flagOf(fault) })),
    );
}

function faultsOf({ kind, id, pointer }: SourcedValue, context: EvidenceContext): readonly EvidenceFault[] {
  const profile = context.registry[kind].get(id);
  if (profile === undefined) return [];
  const statement = pointer.replace(/\/value$/, '');
  const placed = [...statementsOf(profile)].find(({ path }) => toPointer(path) === statement);
  return placed === undefined ? [] : standingOf(profile, placed, context).faults;
}

function flagOf({ code, acknowledged }: EvidenceFault): SourcedValueFault['flag'] {
  if (acknowledged !== null) return 'acknowledged';
  return code === 'stale' ? 'stale' : 'unsupported';
}

/** Each fault as a sentence, once. */
export function faultWarnings(faults: readonly SourcedValueFault[]): string[] {
  const sentences = faults.map(({ fault, flag }) => {
    const refused = flag === 'unsupported' ? ', and `check` refuses it' : '';
    return `A limit of this table ${standingText(fault)}${refused}. ${fault.message}.`;
  });
  return [...new Set(sentences)];
}
