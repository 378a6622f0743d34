import type { Plot, PlotMark } from '../../plots/plot.ts';
import { element, type Markup } from '../../text/html-element.ts';
import { formatNumber } from '../../units/format-quantity.ts';
import { printedUnit } from '../../units/print-symbols.ts';
import type { WayTo } from '../address.ts';
import type { ComparedPairing } from './compared-pairing.ts';

const flowUnit = printedUnit('mm3/s');

/** Pairings beside each other, a row a property; conditions that differ are marked, since the limits below hold under them. */
export function comparisonTable(pairings: readonly ComparedPairing[], to: WayTo): Markup {
  const caption = 'Each pairing by its own table; the first one is what the others are compared with';
  const head = element('tr', {}, [
    element('th', { scope: 'col' }, ['Property']),
    ...pairings.map(({ page, title }) =>
      element('th', { scope: 'col' }, [element('a', { href: to(page) }, [title])]),
    ),
  ]);
  const names = [...new Set(pairings.flatMap(({ facts }) => facts.map(({ name }) => name)))];
  const table = element('table', { class: 'compared' }, [
    element('caption', {}, [caption]),
    element('thead', {}, [head]),
    element('tbody', {}, [flowRow(pairings), ...names.map((name) => factRow(name, pairings))]),
  ]);
  return element('section', { class: 'scroll', tabindex: 0, 'aria-label': caption }, [table]);
}

function flowRow(pairings: readonly ComparedPairing[]): Markup {
  const [first] = pairings;
  const cells = pairings.map((pairing, index) => {
    const { limit, interval } = pairing.flow;
    const range = interval === null ? 'no interval' : `${number(interval.low)} to ${number(interval.high)}`;
    const difference = index === 0 || first === undefined ? '' : ` (${differenceWords(first, pairing)})`;
    return element('td', {}, [element('strong', {}, [number(limit)]), ` ${flowUnit}, ${range}${difference}`]);
  });
  return element('tr', {}, [element('th', { scope: 'row' }, ['Melt flow limit']), ...cells]);
}

/** `+38 %, intervals apart`: by how much a limit is above or below another, and whether that is more than chance. */
export function differenceWords(
  { flow: from }: Pick<ComparedPairing, 'flow'>,
  { flow: to }: Pick<ComparedPairing, 'flow'>,
): string {
  const share = Math.round(100 * (to.limit / from.limit - 1));
  const size = share === 0 ? 'the same within 1 %' : `${share > 0 ? '+' : '−'}${Math.abs(share)} %`;
  if (from.interval === null || to.interval === null) return `${size}, not known whether by chance`;
  const areApart = from.interval.high < to.interval.low || to.interval.high < from.interval.low;
  return `${size}, intervals ${areApart ? 'apart' : 'overlap'}`;
}

function factRow(name: string, pairings: readonly ComparedPairing[]): Markup {
  const facts = pairings.map((pairing) => pairing.facts.find((fact) => fact.name === name));
  const values = facts.map((fact) => fact?.value ?? 'none');
  const isUnequal = facts.some((fact) => fact?.isCondition) && new Set(values).size > 1;
  const heading = isUnequal
    ? element('th', { scope: 'row', class: 'unequal' }, [
        name,
        ' ',
        element('em', {}, ['(unequal condition)']),
      ])
    : element('th', { scope: 'row' }, [name]);
  return element('tr', {}, [heading, ...values.map((value) => element('td', {}, [value]))]);
}

/** Sentences that go before any conclusion: conditions under which the limits were found differ. */
export function unequalConditions(pairings: readonly ComparedPairing[]): string[] {
  const names = new Set(
    pairings.flatMap(({ facts }) => facts.filter(({ isCondition }) => isCondition).map(({ name }) => name)),
  );
  return [...names].filter((name) => {
    const values = pairings.map(({ facts }) => facts.find((fact) => fact.name === name)?.value ?? 'none');
    return new Set(values).size > 1;
  });
}

const styles = ['solid', 'dashed', 'dotted', 'dashDotted'] as const;
const markers = ['circle', 'openSquare', 'openTriangle', 'openDiamond'] as const;

/** The ladders behind the limits over each other, each pairing by a dash and a marker of its own; null where there is none. */
export function overlaidLadders(pairings: readonly ComparedPairing[]): Plot | null {
  const drawn = pairings.filter(({ ladders }) => ladders.length > 0);
  if (drawn.length === 0) return null;
  const marks = pairings.flatMap((pairing, index) => pairingMarks(pairing, index));
  const thresholds = new Set(drawn.flatMap(({ ladders }) => ladders.map(({ curve }) => curve.threshold)));
  return {
    title: 'Missing share of the flow, by pairing',
    description: pairings
      .map(({ title, flow: { limit } }) => `${title}: limit ${number(limit)} ${flowUnit}.`)
      .join(' '),
    x: { quantity: 'commanded flow', unit: flowUnit },
    y: { quantity: 'deficit', unit: '%' },
    marks: [
      ...marks,
      ...[...thresholds].flatMap((at): PlotMark[] =>
        at === null
          ? []
          : [{ kind: 'level', axis: 'y', at: 100 * at, label: `accepted ${number(100 * at)} %` }],
      ),
    ],
  };
}

function pairingMarks({ title, ladders }: ComparedPairing, index: number): PlotMark[] {
  const style = styles[index % styles.length] ?? 'solid';
  const marker = markers[index % markers.length] ?? 'circle';
  return ladders.flatMap(({ curve }, place): PlotMark[] => {
    const label = place === 0 ? { label: title } : {};
    const percent = ({ x, y }: { readonly x: number; readonly y: number }) => ({ x, y: 100 * y });
    return [
      {
        kind: 'band',
        points: curve.band.map(({ x, low, high }) => ({ x, low: 100 * low, high: 100 * high })),
      },
      { kind: 'line', ...label, points: curve.fit.map(percent), style },
      { kind: 'points', ...label, points: curve.readings.map(percent), marker },
    ];
  });
}

function number(value: number): string {
  return formatNumber(value, { decimals: 1 });
}
