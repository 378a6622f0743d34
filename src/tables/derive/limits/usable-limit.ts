import { labelOf } from '../../../registry/facts-of-key.ts';
import type { Policy, Statement } from '../../../registry/generated/documents.ts';
import type { AnyProfile, Profile } from '../../../registry/profile.ts';
import { type Basis, weakerBasis } from '../../../registry/statement.ts';
import { type Problem, type Result, refusal, success } from '../../../result.ts';
import { printable } from '../../../text/printable.ts';
import type { Fraction } from '../../../units/canonical.ts';
import { type SourcedValue, sourcedQuantity, sourcedStatement } from '../sourced-value.ts';

/** The limits for which a policy can ask a basis. */
export type LimitName = keyof NonNullable<Policy['minimumBasis']>;

/** A stated limit as far as a policy lets tables use it. */
export interface UsableLimit {
  readonly value: number;
  readonly basis: Basis;
  readonly ground: SourcedValue;
  /** The house rule by which only a share of the value is used; null where all of it is. */
  readonly cap: { readonly share: Fraction; readonly ground: SourcedValue } | null;
  /** Whether it rests on less than the policy asks for, and is used all the same. */
  readonly isWeak: boolean;
}

/** What a limit rests on is less than the policy asks for. */
export type WeakLimit = Problem<'weakBasis'>;

/** What a policy makes of a limit: all of it, a share, or nothing. The problem says what the limit rests on. */
export function usableLimit(
  policy: Profile<'policy'>,
  name: LimitName,
  profile: AnyProfile,
  statement: Statement<number>,
): Result<UsableLimit, WeakLimit> {
  const asked = policy.data.minimumBasis?.[name];
  const ground = sourcedStatement(profile, statement, whatOf(name));
  const limit = { value: statement.value, basis: statement.basis, ground };
  const isWeak = asked !== undefined && weakerBasis(asked.basis, statement.basis) !== asked.basis;
  if (!isWeak || asked === undefined) return success({ ...limit, cap: null, isWeak: false });
  if (asked.weaker === 'refuse') {
    return refusal(
      'weakBasis',
      `The ${ground.what} of ${profile.id} is only ${statement.basis}, and the policy "${printable(policy.id)}" asks for ${asked.basis} or better`,
      'Back it with something stronger, or take another policy.',
    );
  }
  if (asked.weaker === 'flag' || asked.share === undefined) return success({ ...limit, cap: null, isWeak });
  const path = ['minimumBasis', name, 'share'];
  const share = sourcedQuantity(policy, path, asked.share, `share used of what is only ${statement.basis}`);
  return success({ ...limit, cap: { share: asked.share, ground: share }, isWeak });
}

/** The part of a limit's value that tables may use. */
export function usableValue({ value, cap }: Pick<UsableLimit, 'value' | 'cap'>): number {
  return value * (cap?.share ?? 1);
}

/** A flow that a machine states limits a pairing as that of a filament does, and is called the same. */
function whatOf(name: LimitName): string | undefined {
  return name === 'meltFlow' ? labelOf('filament', 'meltFlow') : undefined;
}
