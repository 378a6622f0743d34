import { drawPlot } from '../../plots/draw-plot.ts';
import type { Plot } from '../../plots/plot.ts';
import { formatPlotAsCsv } from '../../plots/plot-as-csv.ts';
import { element, type Markup } from '../../text/html-element.ts';
import { enumerated } from '../../text/words.ts';
import { rootPages, wayFrom } from '../address.ts';
import type { ComparedPairing } from '../compare/compared-pairing.ts';
import { comparisonTable, overlaidLadders, unequalConditions } from '../compare/comparison-view.ts';
import type { CatalogueData } from '../data/catalogue-data.ts';
import { stateOf } from '../find/question-address.ts';
import { loadPairing } from './page-data.ts';

const to = wayFrom(rootPages.compare);

/** Shows the pairings that the address names, as far as the catalogue has them. */
export function startComparing(main: HTMLElement, { pairings }: CatalogueData): void {
  const known = new Set(pairings.map(({ page }) => page));
  const untouched = main.innerHTML;
  const show = async () => {
    const asked = stateOf(location.hash).chosen.filter((page) => known.has(page));
    const loaded = await Promise.all(asked.map(loadPairing));
    const compared = loaded.filter((pairing) => pairing !== null);
    main.innerHTML = compared.length === 0 ? untouched : comparisonMarkup(compared);
  };
  addEventListener('hashchange', show);
  void show();
}

function comparisonMarkup(pairings: readonly ComparedPairing[]): string {
  const plot = overlaidLadders(pairings);
  return [
    ...originMarkup(pairings),
    ...warningMarkup(unequalConditions(pairings)),
    comparisonTable(pairings, to),
    ...(plot === null ? [] : [element('h2', {}, ['Ladders']), figure(plot)]),
    element('p', {}, [element('a', { href: to(rootPages.home) }, ['Other pairings'])]),
  ]
    .map(({ markup }) => markup)
    .join('\n');
}

function originMarkup(pairings: readonly ComparedPairing[]): Markup[] {
  const origins = [...new Set(pairings.flatMap(({ origin }) => origin ?? []))];
  if (origins.length === 0) return [];
  const text = `${origins.join('; ')}: starting points for a supervised trial, nothing more.`;
  return [element('div', { class: 'unreal' }, [element('p', {}, [element('strong', {}, [text])])])];
}

function warningMarkup(names: readonly string[]): Markup[] {
  if (names.length === 0) return [];
  const text = `These limits were not found under the same conditions: ${enumerated(names.map((name) => name.toLowerCase()))}. Their difference may come from there.`;
  return [
    element('ul', { class: 'warning' }, [
      element('li', {}, [element('strong', {}, ['Warning:']), ' ', text]),
    ]),
  ];
}

function figure(plot: Plot): Markup {
  const svg = drawPlot(plot);
  const file = (type: string, text: string) => `data:${type};charset=utf-8,${encodeURIComponent(text)}`;
  return element('figure', {}, [
    { markup: svg.trimEnd() },
    element('figcaption', {}, [
      'The ladders behind each limit: line, 95 % band and readings. ',
      element('a', { href: file('text/csv', formatPlotAsCsv(plot)), download: 'comparison.csv' }, [
        'Numbers (CSV)',
      ]),
      ' ',
      element('a', { href: file('image/svg+xml', svg), download: 'comparison.svg' }, ['Picture (SVG)']),
    ]),
  ]);
}
