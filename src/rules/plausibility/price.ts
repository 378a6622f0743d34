import type { Filament, Statement } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import { stated } from '../../registry/stated.ts';
import type { Money } from '../../units/canonical.ts';
import { shown, shownNumber } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Currencies whose unit buys about as much; prices in others are not judged. */
const judged = ['EUR', 'USD', 'GBP', 'CHF'];
const usual = {
  machine: { low: 50, high: 250_000 },
  filament: { low: 3, high: 2000 },
} as const;
/** Of a kilogram of filament: commodity plastics by the pallet to implant grades. */
const perKilogram = { low: 5, high: 5000 };

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'profile',
  severity: 'warning',
  statement: 'The price of a machine, a spool or a kilogram of filament is in the usual range.',
  rationale:
    'The cost of a saved hour is calculated from prices; one digit too many makes a machine look absurdly expensive.',
  source: `Common practice, no source: machines ${usual.machine.low} to ${usual.machine.high}, spools ${usual.filament.low} to ${usual.filament.high}, a kilogram of filament ${perKilogram.low} to ${perKilogram.high}, in ${judged.join(', ')}.`,
  example: stating('machine', 'price', { bad: '6800000 EUR', good: '6800 EUR' }),
  *check(profile) {
    if (profile.kind === 'machine' || profile.kind === 'filament')
      yield* outside(profile.data.price, usual[profile.kind], profile.kind);
    if (profile.kind === 'filament') yield* outsidePerKilogram(profile.data);
  },
};

function* outside(
  statements: readonly Statement<Money>[] | undefined,
  { low, high }: { readonly low: number; readonly high: number },
  kind: keyof typeof usual,
): Generator<Hit> {
  for (const { path, value } of stated(statements, ['price'])) {
    const { amount, currency } = value;
    if (!judged.includes(currency) || amount < 0 || (amount >= low && amount <= high)) continue;
    yield {
      path,
      part: 'value',
      message: `${amount} ${currency} is an unusual price for a ${kind === 'machine' ? 'machine' : 'spool'}`,
      found: `${amount} ${currency}`,
      allowed: `${low}..${high} ${currency}`,
      help:
        amount === 0
          ? 'Leave the line out if the price is not known; if it was free, acknowledge the finding.'
          : 'Check the digits, and the decimal point; if it costs that, acknowledge the finding.',
    };
  }
}

function* outsidePerKilogram({ price, spoolMass }: Filament): Generator<Hit> {
  if (spoolMass === undefined || spoolMass <= 0) return;
  for (const { path, value } of stated(price, ['price'])) {
    const { amount, currency } = value;
    const isUsual = amount >= usual.filament.low && amount <= usual.filament.high;
    const share = (1000 * amount) / spoolMass;
    if (!judged.includes(currency) || !isUsual || (share >= perKilogram.low && share <= perKilogram.high))
      continue;
    yield {
      path,
      part: 'value',
      message: `${amount} ${currency} for ${shown(spoolMass, 'mass')} come to ${shownNumber(Number(share.toPrecision(3)))} ${currency} a kilogram`,
      found: `${amount} ${currency}`,
      allowed: `${perKilogram.low}..${perKilogram.high} ${currency} a kilogram`,
      help: 'Check the digits of the price and of the mass of the spool; if it costs that, acknowledge the finding.',
    };
  }
}
