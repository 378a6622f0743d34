import type { Statement } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import { stated } from '../../registry/stated.ts';
import type { Money } from '../../units/canonical.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Currencies whose unit buys about as much; prices in others are not judged. */
const judged = ['EUR', 'USD', 'GBP', 'CHF'];
const usual = {
  machine: { low: 50, high: 250_000 },
  filament: { low: 3, high: 2000 },
} as const;

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'profile',
  severity: 'warning',
  statement: 'The price of a machine or a spool is in the usual range.',
  rationale:
    'The cost of a saved hour is calculated from prices; one digit too many makes a machine look absurdly expensive.',
  source: `Common practice, no source: machines ${usual.machine.low} to ${usual.machine.high}, spools ${usual.filament.low} to ${usual.filament.high}, in ${judged.join(', ')}.`,
  example: stating('machine', 'price', { bad: '6800000 EUR', good: '6800 EUR' }),
  *check(profile) {
    if (profile.kind === 'machine' || profile.kind === 'filament')
      yield* outside(profile.data.price, usual[profile.kind], profile.kind);
  },
};

function* outside(
  statements: readonly Statement<Money>[] | undefined,
  { low, high }: { readonly low: number; readonly high: number },
  kind: keyof typeof usual,
): Generator<Hit> {
  for (const { path, value } of stated(statements, ['price'])) {
    const { amount, currency } = value;
    if (!judged.includes(currency) || amount <= 0 || (amount >= low && amount <= high)) continue;
    yield {
      path,
      part: 'value',
      message: `${amount} ${currency} is an unusual price for a ${kind === 'machine' ? 'machine' : 'spool'}`,
      found: `${amount} ${currency}`,
      allowed: `${low}..${high} ${currency}`,
      help: 'Check the digits, and the decimal point; if it costs that, acknowledge the finding.',
    };
  }
}
