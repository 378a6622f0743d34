import { basisWords } from '../../knowledge/origin.ts';
import { svgElement } from '../../plots/svg-element.ts';
import { element, type Markup } from '../../text/html-element.ts';
import { formatNumber } from '../../units/format-quantity.ts';
import { printedUnit } from '../../units/print-symbols.ts';
import { profilePage, type WayTo } from '../address.ts';
import type { CataloguedPairing, TestedLimit } from '../catalogued-pairing.ts';

const flowUnit = printedUnit('mm3/s');

/** A pairing in a list, with the limit that stands for it there. */
interface ListedPairing {
  readonly pairing: CataloguedPairing;
  readonly limit: TestedLimit;
  /** Why it is there, or what it lacks; empty where that need not be said. */
  readonly reason: string;
}

/** What a list lets one do besides reading: choose pairings, by their pages, to compare them. */
interface Choosing {
  readonly chosen: readonly string[];
}

/** Pairings by their largest flow, the largest first. */
export function byLargestFlow(pairings: readonly CataloguedPairing[]): ListedPairing[] {
  return pairings
    .toSorted((one, other) => other.largestFlow.limit - one.largestFlow.limit)
    .map((pairing) => {
      const { limit, ...flow } = pairing.largestFlow;
      return { pairing, limit: { ...flow, value: limit, temperature: pairing.temperature }, reason: '' };
    });
}

/** Pairings that a list of many shows: what stands further down is found by asking, or on the page of its machine or filament. */
const mostListed = 100;

/** The pairings of a list that may be long, the largest flow first, and a sentence where not all of them are shown. */
export function longPairingList(
  pairings: readonly CataloguedPairing[],
  caption: string,
  to: WayTo,
): readonly Markup[] {
  const shown = byLargestFlow(pairings).slice(0, mostListed);
  const rest = pairings.length - shown.length;
  return [
    pairingTable(shown, caption, to),
    ...(rest === 0
      ? []
      : [
          element('p', {}, [
            `${rest} more have a smaller flow: they stand on the pages of their machines and filaments.`,
          ]),
        ]),
  ];
}

/** Pairings in the given order with their intervals on one scale that begins at zero. */
export function pairingTable(
  listed: readonly ListedPairing[],
  caption: string,
  to: WayTo,
  choosing: Choosing | null = null,
): Markup {
  const top = Math.max(1, ...listed.map(({ limit: { value, interval } }) => interval?.high ?? value));
  const end = Math.ceil(top / 10) * 10;
  const hasReasons = listed.some(({ reason }) => reason !== '');
  const heading = (text: string, name?: string) => element('th', { scope: 'col', class: name }, [text]);
  const scale = element('span', { class: 'scale' }, [
    element('span', {}, ['0']),
    element('span', {}, [`${end} ${flowUnit}`]),
  ]);
  const head = element('tr', {}, [
    ...[heading('Filament'), heading('Machine'), heading('Nozzle'), heading('Temperature', 'number')],
    ...[heading('Largest flow', 'number'), heading('95 % interval', 'number')],
    element('th', { scope: 'col' }, ['On one scale', scale]),
    heading('Basis'),
    ...(hasReasons ? [heading('Why')] : []),
    ...(choosing === null ? [] : [heading('Compare')]),
  ]);
  const table = element('table', { class: 'pairings' }, [
    element('caption', {}, [caption]),
    element('thead', {}, [head]),
    element(
      'tbody',
      {},
      listed.map((each) => pairingRow(each, end, to, hasReasons, choosing)),
    ),
  ]);
  return element('section', { class: 'scroll', tabindex: 0, 'aria-label': caption }, [table]);
}

function pairingRow(
  { pairing, limit, reason }: ListedPairing,
  end: number,
  to: WayTo,
  hasReasons: boolean,
  choosing: Choosing | null,
): Markup {
  const { page, filamentName, machine, machineName, nozzle } = pairing;
  const { value, temperature, interval, basis, isSimulated, note } = limit;
  const number = (content: string | Markup) => element('td', { class: 'number' }, [content]);
  return element('tr', {}, [
    element('th', { scope: 'row' }, [element('a', { href: to(page) }, [filamentName])]),
    element('td', {}, [element('a', { href: to(profilePage('machine', machine)) }, [machineName])]),
    element('td', {}, [nozzle]),
    number(`${formatNumber(temperature, { significantDigits: 6 })} °C`),
    element('td', { class: 'number' }, [element('strong', {}, [flowText(value)]), ` ${flowUnit}`]),
    interval === null
      ? element('td', { class: 'note' }, [note ?? 'none'])
      : number(`${flowText(interval.low)} to ${flowText(interval.high)}`),
    element('td', {}, [{ markup: intervalBar(limit, end) }]),
    element('td', {}, [basisWords(basis, isSimulated)]),
    ...(hasReasons ? [element('td', { class: 'why' }, [reason])] : []),
    ...(choosing === null ? [] : [element('td', {}, [chooseBox(pairing, choosing)])]),
  ]);
}

function chooseBox(
  { page, filamentName, machineName, nozzle }: CataloguedPairing,
  { chosen }: Choosing,
): Markup {
  const label = `compare ${filamentName} on ${machineName}, ${nozzle}`;
  const checked = chosen.includes(page) ? true : undefined;
  return element('label', { class: 'choose' }, [
    element('input', { type: 'checkbox', name: 'pairing', value: page, checked, 'aria-label': label }),
  ]);
}

/** Decimals line up below each other. */
function flowText(value: number): string {
  return formatNumber(value, { decimals: 1 });
}

const bar = { width: 208, height: 20, pad: 5 } as const;

/** Dashes tell the basis as the words beside the bar do; a limit without an interval is a mark alone. */
function intervalBar({ value, interval, basis }: TestedLimit, end: number): string {
  const { width, height, pad } = bar;
  const place = (flow: number) => pad + (flow / end) * (width - 2 * pad);
  const middle = height / 2;
  const ends = interval === null ? '' : intervalPath(place(interval.low), place(interval.high), middle);
  return svgElement('svg', { viewBox: `0 0 ${width} ${height}`, 'aria-hidden': 'true' }, [
    svgElement('path', {
      d: `M${pad},${height - 2}H${width - pad}`,
      stroke: 'currentColor',
      'stroke-width': 0.5,
    }),
    ...(ends === ''
      ? []
      : [svgElement('path', { d: ends, fill: 'none', stroke: 'currentColor', 'stroke-width': 2 })]),
    svgElement('circle', {
      ...{ cx: place(value), cy: middle, r: 2.5, stroke: 'currentColor', 'stroke-width': 1.5 },
      fill: basis === 'measured' ? 'currentColor' : 'none',
    }),
  ]);
}

function intervalPath(from: number, to: number, middle: number): string {
  const [low, high] = [from, to].map((place) => place.toFixed(2));
  return `M${low},${middle - 6}v12M${low},${middle}H${high}M${high},${middle - 6}v12`;
}
