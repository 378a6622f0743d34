import type { Problem } from '../../result.ts';
import { enumerated } from '../../text/words.ts';
import type { Money, Seconds } from '../../units/canonical.ts';

const SECONDS_PER_HOUR = 3600;

/** What an hour of printing can cost besides filament. */
export const costNames = ['power', 'wear', 'labour'] as const;

/** What an hour of printing costs, as far as it was given; all in one currency. */
export type HourlyCosts = Readonly<Partial<Record<(typeof costNames)[number], Money>>>;

/** Why there is no figure of money. */
export type NoFigure =
  | 'priceUnknown'
  | 'pricesDiffer'
  | 'otherCurrency'
  | 'savesNothing'
  | 'notDearer'
  | 'paidAlready';

/** The currencies of some costs, each once. */
export function currenciesOf(costs: HourlyCosts): string[] {
  return [...new Set(costNames.flatMap((name) => costs[name]?.currency ?? []))];
}

/** Costs of an hour that cannot be added up. */
export type CurrencyProblem = Problem<'severalCurrencies'>;

/** Why costs cannot be added up; null where they can. */
export function currencyProblem(costs: HourlyCosts): CurrencyProblem | null {
  const currencies = currenciesOf(costs);
  return currencies.length < 2
    ? null
    : {
        code: 'severalCurrencies',
        message: `The costs of an hour are in ${enumerated(currencies)}`,
        help: 'Give all of them in one currency, that of the machine prices.',
      };
}

/** What printing for a time costs in power, wear and labour; null where none of them was given. */
export function runningCost(time: Seconds, costs: HourlyCosts): Money | null {
  const given = costNames.flatMap((name) => costs[name] ?? []);
  const [first] = given;
  if (first === undefined) return null;
  const hour = given.reduce((sum, { amount }) => sum + amount, 0);
  return { amount: (time / SECONDS_PER_HOUR) * hour, currency: first.currency };
}

/** `with power and wear, without filament and labour`: what figures of money hold and what they leave out. */
export function costScope(costs: HourlyCosts): string {
  const held = costNames.filter((name) => costs[name] !== undefined);
  const leftOut = ['filament', ...costNames.filter((name) => costs[name] === undefined)];
  const without = `without ${enumerated(leftOut)}`;
  return held.length === 0 ? without : `with ${enumerated(held)}, ${without}`;
}

/** Why there is no figure, in words; `currency` is that of the machine prices. */
export function gapText(gap: NoFigure, currency: string | null): string {
  switch (gap) {
    case 'priceUnknown':
      return 'no figure: a machine price is unknown';
    case 'pricesDiffer':
      return 'no figure: the machine prices are in two currencies';
    case 'otherCurrency':
      return `no figure: the machine prices are in ${currency ?? 'another currency'}`;
    case 'savesNothing':
      return 'never: it saves no time';
    case 'notDearer':
      return 'at once: the machine is not dearer';
    case 'paidAlready':
      return 'nothing: power, wear and labour saved pay for it';
    default:
      return gap satisfies never;
  }
}
