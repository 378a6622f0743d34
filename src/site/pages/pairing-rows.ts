import { basisWords } from '../../knowledge/origin.ts';
import { svgElement } from '../../plots/svg-element.ts';
import { element, type Markup } from '../../text/html-element.ts';
import { formatNumber } from '../../units/format-quantity.ts';
import { printedUnit } from '../../units/print-symbols.ts';
import { profilePage, type WayTo } from '../address.ts';
import type { CataloguedPairing } from '../catalogued-pairing.ts';

const flowUnit = printedUnit('mm3/s');

/** Pairings, the largest flow first, with their intervals on one scale that begins at zero. */
export function pairingTable(pairings: readonly CataloguedPairing[], caption: string, to: WayTo): Markup {
  const sorted = pairings.toSorted((one, other) => other.largestFlow.limit - one.largestFlow.limit);
  const top = Math.max(1, ...sorted.map(({ largestFlow: { limit, interval } }) => interval?.high ?? limit));
  const end = Math.ceil(top / 10) * 10;
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
  ]);
  const table = element('table', { class: 'pairings' }, [
    element('caption', {}, [caption]),
    element('thead', {}, [head]),
    element(
      'tbody',
      {},
      sorted.map((pairing) => pairingRow(pairing, end, to)),
    ),
  ]);
  return element('section', { class: 'scroll', tabindex: 0, 'aria-label': caption }, [table]);
}

function pairingRow(pairing: CataloguedPairing, end: number, to: WayTo): Markup {
  const { page, filamentName, machine, machineName, nozzle, temperature, largestFlow } = pairing;
  const { limit, interval, basis, isSimulated } = largestFlow;
  const number = (content: string | Markup) => element('td', { class: 'number' }, [content]);
  return element('tr', {}, [
    element('th', { scope: 'row' }, [element('a', { href: to(page) }, [filamentName])]),
    element('td', {}, [element('a', { href: to(profilePage('machine', machine)) }, [machineName])]),
    element('td', {}, [nozzle]),
    number(`${formatNumber(temperature, { significantDigits: 6 })} °C`),
    element('td', { class: 'number' }, [element('strong', {}, [flowText(limit)]), ` ${flowUnit}`]),
    number(interval === null ? 'none' : `${flowText(interval.low)} to ${flowText(interval.high)}`),
    element('td', {}, [{ markup: intervalBar(pairing, end) }]),
    element('td', {}, [basisWords(basis, isSimulated)]),
  ]);
}

/** Decimals line up below each other. */
function flowText(value: number): string {
  return formatNumber(value, { decimals: 1 });
}

const bar = { width: 208, height: 20, pad: 5 } as const;

/** Dashes tell the basis as the words beside the bar do; a limit without an interval is a mark alone. */
function intervalBar({ largestFlow: { limit, interval, basis } }: CataloguedPairing, end: number): string {
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
      ...{ cx: place(limit), cy: middle, r: 2.5, stroke: 'currentColor', 'stroke-width': 1.5 },
      fill: basis === 'measured' ? 'currentColor' : 'none',
    }),
  ]);
}

function intervalPath(from: number, to: number, middle: number): string {
  const [low, high] = [from, to].map((place) => place.toFixed(2));
  return `M${low},${middle - 6}v12M${low},${middle}H${high}M${high},${middle - 6}v12`;
}
