import { element, type Markup } from '../../text/html-element.ts';
import { enumerated } from '../../text/words.ts';
import { rootPages, wayFrom } from '../address.ts';
import type { ComparedPairing } from '../compare/compared-pairing.ts';
import { comparisonTable, overlaidLadders, unequalConditions } from '../compare/comparison-view.ts';
import { plotFigure } from '../compare/plot-figure.ts';
import { stateOf } from '../find/question-address.ts';
import { startChoosing } from './choose-pairing.ts';
import { startNeed } from './need-section.ts';
import { comparedJobs, loadPairing } from './page-data.ts';

const to = wayFrom(rootPages.compare);

/** Shows the pairings that the address names, as far as the catalogue has them. */
function startComparing(main: HTMLElement): void {
  const untouched = main.innerHTML;
  const show = async () => {
    const loaded = await Promise.all(stateOf(location.hash).chosen.filter(isPairingPage).map(loadPairing));
    const compared = loaded.filter((pairing) => pairing !== null);
    main.innerHTML = compared.length === 0 ? untouched : comparisonMarkup(compared);
    const section = document.getElementById('need');
    if (section !== null) startNeed(section, comparedJobs(), compared);
  };
  addEventListener('hashchange', show);
  void show();
}

/** Addresses come from anybody: a script is loaded from the folder of pairings alone. */
function isPairingPage(page: string): boolean {
  return /^pairings(?:\/(?!\.{1,2}\/)[^/\\]+)+\.html$/.test(page);
}

function comparisonMarkup(pairings: readonly ComparedPairing[]): string {
  const plot = overlaidLadders(pairings);
  return [
    ...originMarkup(pairings),
    ...warningMarkup(unequalConditions(pairings)),
    comparisonTable(pairings, to),
    ...(plot === null
      ? []
      : [
          element('h2', {}, ['Ladders']),
          plotFigure(plot, 'The ladders behind each limit: line, 95 % band and readings.', 'comparison'),
        ]),
    needSection,
    element('p', {}, [element('a', { href: to(rootPages.home) }, ['Other pairings'])]),
  ]
    .map(({ markup }) => markup)
    .join('\n');
}

/** Filled where jobs are known. */
const needSection = element('section', { id: 'need', 'aria-labelledby': 'need-heading', hidden: true }, [
  element('h2', { id: 'need-heading' }, ['Do I need the speed?']),
  element('div', { id: 'need-origin' }),
  element('p', { id: 'need-told', class: 'answer', role: 'status' }),
  element('div', { id: 'need-fields' }),
  element('div', { id: 'need-figures' }),
]);

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

// The script of the page on which pairings are compared, which needs it.
const compare = document.getElementById('compare');
if (compare !== null) startComparing(compare);
const choosing = document.getElementById('choose');
if (choosing !== null) void startChoosing(choosing);
