import type { ComparisonTerms } from '../../decisions/compare/compare-figures.ts';
import { costNames } from '../../decisions/compare/hourly-costs.ts';
import type { PairingFigures } from '../../decisions/compare/pairing-figures.ts';
import type { Money } from '../../units/canonical.ts';

/** The command that gives the same figures; null where the pairings follow different house rules, since it takes one policy. */
export function needCommand(
  job: string,
  pairings: readonly PairingFigures[],
  { layerHeight, meltShare, jobs, prices = {}, hourValue, hourlyCosts = {} }: ComparisonTerms,
): string | null {
  const [policy, ...others] = new Set(pairings.map((figures) => figures.policy));
  if (policy === undefined || others.length > 0) return null;
  const options: readonly (readonly [string, string | undefined])[] = [
    ['policy', policy],
    ['layer-height', layerHeight === undefined ? undefined : `"${layerHeight} mm"`],
    ['melt-share', meltShare === undefined ? undefined : `"${shareText(meltShare)} %"`],
    ['jobs', jobs === undefined ? undefined : String(jobs)],
    ...Object.entries(prices).map(
      ([machine, price]) => ['price', `"${machine}=${price.amount} ${price.currency}"`] as const,
    ),
    ['hour-value', moneyText(hourValue)],
    ...costNames.map((name) => [name, moneyText(hourlyCosts[name])] as const),
  ];
  return [
    'npx meltbounds compare',
    job,
    ...pairings.map(({ machine, nozzle, filament }) => `${machine}:${nozzle}+${filament}`),
    ...options.flatMap(([name, value]) => (value === undefined ? [] : [`--${name} ${value}`])),
  ].join(' ');
}

/** A share as it was typed in per cent, without what binary fractions add. */
function shareText(share: number): string {
  return String(Number((100 * share).toPrecision(12)));
}

function moneyText(money: Money | undefined): string | undefined {
  return money === undefined ? undefined : `"${money.amount} ${money.currency}"`;
}
