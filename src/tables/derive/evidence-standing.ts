import type { reduceTrial } from '../../bench/reduce-trial.ts';
import { reducingOnce } from '../../bench/reducing-once.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { toPointer } from '../../registry/shape.ts';
import { failure } from '../../result.ts';
import type { ProfileRule, RuleContext } from '../../rules/engine/rule.ts';
import { rule as otherConditions } from '../../rules/evidence/other-conditions.ts';
import { rule as staleFirmware } from '../../rules/evidence/stale-firmware.ts';
import { rule as unsupportedLimit } from '../../rules/evidence/unsupported.ts';
import { rule as valueAboveInterval } from '../../rules/evidence/value-above-interval.ts';
import type { RowFlag } from './row-flag.ts';
import type { SourcedValue } from './sourced-value.ts';

/** What `check` would find about the evidence of a ground. */
export interface EvidenceFault {
  readonly ground: SourcedValue;
  readonly flag: Extract<RowFlag, 'unsupported' | 'stale'>;
  /** A sentence without its full stop. */
  readonly message: string;
}

/** Rules that judge a statement against its trial or its interval; a breach means that the limit does not stand. */
const statementRules: readonly ProfileRule[] = [unsupportedLimit, otherConditions, valueAboveInterval];

/**
 * Where the evidence of the sourcedValues that a table uses does not support them, or is stale. Only those trials are reduced
 * that the sourcedValues name.
 */
export function evidenceFaults(
  registry: Registry,
  sourcedValues: readonly SourcedValue[],
  reduce: typeof reduceTrial,
): EvidenceFault[] {
  const named = new Set(sourcedValues.map(({ evidence }) => evidence));
  const reduceOnce = reducingOnce(registry, reduce);
  const context: RuleContext = {
    registry,
    // The rules above judge no dates.
    today: '',
    reduce: (id) => (named.has(id) ? reduceOnce(id) : failure([])),
  };
  return sourcedValues.filter(({ basis }) => basis !== null).flatMap((ground) => faultsOf(ground, context));
}

function faultsOf(ground: SourcedValue, context: RuleContext): EvidenceFault[] {
  const profile = context.registry[ground.kind].get(ground.id);
  const trial = context.registry.trial.get(ground.evidence ?? '');
  const missing =
    ground.basis === 'measured' && trial === undefined
      ? [`The ${ground.what} of ${ground.id} is called measured, but its trial is not in the registry`]
      : [];
  const unsupported =
    profile === undefined ? [] : statementRules.flatMap((rule) => hits(rule, profile, ground, context));
  const stale =
    trial === undefined ? [] : [...staleFirmware.check(trial, context)].map(({ message }) => message);
  return [
    ...[...missing, ...unsupported].map((message) => ({ ground, flag: 'unsupported' as const, message })),
    ...stale.map((message) => ({ ground, flag: 'stale' as const, message })),
  ];
}

/** Messages of a rule about the statement of a ground. */
function hits(
  rule: ProfileRule,
  profile: AnyProfile,
  { pointer }: SourcedValue,
  context: RuleContext,
): string[] {
  const statement = pointer.replace(/\/value$/, '');
  return [...rule.check(profile, context)]
    .filter(({ path }) => `${toPointer(path)}/`.startsWith(`${statement}/`))
    .map(({ message }) => message);
}

/** Each fault as a sentence, once. */
export function faultWarnings(faults: readonly EvidenceFault[]): string[] {
  const sentences = faults.map(({ flag, message }) =>
    flag === 'stale'
      ? `A limit of this table has old evidence. ${message}.`
      : `A limit of this table does not stand, and \`check\` refuses it. ${message}.`,
  );
  return [...new Set(sentences)];
}
