import type { ComparisonTerms } from '../../decisions/compare/compare-figures.ts';
import { costNames } from '../../decisions/compare/hourly-costs.ts';
import type { PairingFigures } from '../../decisions/compare/pairing-figures.ts';
import type { Money } from '../../units/canonical.ts';
import { numberIn } from '../find/question-address.ts';

/** Fields for the prices of the machines, in the order in which the pairings have them: there are four pairings at most. */
export const priceNames = ['price1', 'price2', 'price3', 'price4'] as const;

/** What "do I need the speed?" is asked with, by the names of its fields and in its address. */
export const needNames = [
  ...(['job', 'layer', 'share', 'jobs', 'currency'] as const),
  ...priceNames,
  'hour',
  ...costNames,
] as const;

export type NeedName = (typeof needNames)[number];

/** Each field as it was typed; empty where nothing was. */
export type NeedFields = Readonly<Record<NeedName, string>>;

/** What a fragment of an address says of the fields. */
export function needFieldsOf(fragment: string): NeedFields {
  const asked = new URLSearchParams(fragment.replace(/^#/, ''));
  const entries = needNames.map((name) => [name, (asked.get(name) ?? '').trim()]);
  return Object.fromEntries(entries) as NeedFields;
}

/** The fragment of an address with pairings and fields; empty fields are left out. */
export function needFragment(chosen: readonly string[], fields: NeedFields): string {
  return new URLSearchParams([
    ...chosen.map((page): [string, string] => ['pairing', page]),
    ...needNames.flatMap((name): [string, string][] => (fields[name] === '' ? [] : [[name, fields[name]]])),
  ]).toString();
}

/** What fields ask of a comparison, and the names of those that cannot be read. */
interface ReadNeed {
  readonly terms: ComparisonTerms;
  readonly wrong: readonly NeedName[];
}

/** The machines of some pairings, each once, as the fields of their prices have them. */
export function machinesOf(pairings: readonly Pick<PairingFigures, 'machine'>[]): string[] {
  return [...new Set(pairings.map(({ machine }) => machine))].slice(0, priceNames.length);
}

/** Reads the fields for the machines that are asked about; amounts are in the currency that is given where none was typed. */
export function readNeed(fields: NeedFields, usualCurrency: string, machines: readonly string[]): ReadNeed {
  const currency = fields.currency === '' ? usualCurrency : fields.currency.toUpperCase();
  const isCurrency = /^[A-Z]{3}$/.test(currency);
  const layerHeight = numberWhere(fields.layer, (value) => value > 0);
  const share = numberWhere(fields.share, (value) => value > 0 && value <= 100);
  const jobs = numberWhere(fields.jobs, (value) => Number.isInteger(value) && value > 0 && value < 1e9);
  const money = (text: string): Money | null => {
    const amount = numberWhere(text, (value) => value > 0);
    return amount === null || !isCurrency ? null : { amount, currency };
  };
  const hourValue = money(fields.hour);
  const costs = costNames.flatMap((name) => {
    const cost = money(fields[name]);
    return cost === null ? [] : [[name, cost] as const];
  });
  const prices = machines.flatMap((machine, index) => {
    const price = money(fields[priceNames[index] ?? 'price1']);
    return price === null ? [] : [[machine, price] as const];
  });
  const isPriceRead = (name: (typeof priceNames)[number]) =>
    machines[priceNames.indexOf(name)] === undefined || money(fields[name]) !== null;
  const read: Readonly<Record<NeedName, boolean>> = {
    ...{ price1: isPriceRead('price1'), price2: isPriceRead('price2') },
    ...{ price3: isPriceRead('price3'), price4: isPriceRead('price4') },
    ...{ job: true, layer: layerHeight !== null, share: share !== null, jobs: jobs !== null },
    ...{ currency: isCurrency, hour: hourValue !== null },
    ...{ power: false, wear: false, labour: false },
    ...Object.fromEntries(costs.map(([name]) => [name, true])),
  };
  return {
    terms: {
      ...(layerHeight !== null && { layerHeight }),
      ...(share !== null && { meltShare: share / 100 }),
      ...(jobs !== null && { jobs }),
      ...(prices.length > 0 && { prices: Object.fromEntries(prices) }),
      ...(hourValue !== null && { hourValue }),
      hourlyCosts: Object.fromEntries(costs),
    },
    wrong: needNames.filter((name) => fields[name] !== '' && !read[name]),
  };
}

function numberWhere(text: string, holds: (value: number) => boolean): number | null {
  const value = numberIn(text);
  return value !== null && holds(value) ? value : null;
}
