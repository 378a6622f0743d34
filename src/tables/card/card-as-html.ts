import { element, type Markup } from '../../text/html-element.ts';
import { printedUnit } from '../../units/print-symbols.ts';
import { withUnit } from '../write/words.ts';
import { type CardFeature, type CardNote, type CardSetting, type CardView, cardRoom } from './card-view.ts';

/** A card as HTML: one page of A4 in print, whatever it says. */
export function cardMarkup(card: CardView): Markup {
  return element('article', { class: classOf(card) }, [
    element('h1', card.title.length > cardRoom.roomy.title ? { class: 'long' } : {}, [card.title]),
    element('p', { class: 'ground' }, [card.facts.join(' · ')]),
    originMarkup(card.origin),
    element('dl', { class: 'settings' }, card.settings.map(settingMarkup)),
    speedsMarkup(card),
    ...(card.marks.length === 0 ? [] : [element('p', { class: 'marks' }, [`${card.marks.join('; ')}.`])]),
    element('dl', { class: 'besides' }, card.besides.map(settingMarkup)),
    ...(card.notes.length === 0 ? [] : [element('ul', { class: 'notes' }, card.notes.map(noteMarkup))]),
    element('p', { class: 'dangers' }, [dangers]),
    element('p', { class: 'versions' }, [versionsText(card)]),
  ]);
}

function classOf({ origin, isRoomy }: CardView): string {
  return ['card', ...(origin === null ? [] : ['unreal']), ...(isRoomy ? ['roomy'] : [])].join(' ');
}

const purpose = 'Starting points for a supervised trial, never a licence to exceed a limit of the maker.';
const dangers =
  'Hot ends burn, dryers can ignite, fumes harm, belts catch fingers, unattended machines cause fires: see overleaf.';

function originMarkup(origin: string | null): Markup {
  const name = origin === null ? [] : [element('strong', {}, [origin]), ' '];
  return element('p', { class: 'origin' }, [...name, purpose]);
}

function settingMarkup({ name, value, note }: CardSetting): Markup {
  const shown = element('strong', {}, [value]);
  const content = note === '' ? [shown] : [shown, ' ', element('span', { class: 'quiet' }, [note])];
  return element('div', {}, [element('dt', {}, [name]), element('dd', {}, content)]);
}

function speedsMarkup(card: CardView): Markup {
  const caption = `Speeds in mm/s by layer height, line ${withUnit(card.lineWidth, 'mm')} wide`;
  const columns = [
    ...card.layerHeights.map((height) => headCell(withUnit(height, 'mm'), 'number')),
    headCell('acceleration', 'number', 'mm/s2'),
    headCell('fan', 'number'),
    headCell('limited by'),
  ];
  const table = element('table', { class: 'typed' }, [
    element('caption', {}, [caption]),
    element('thead', {}, [element('tr', {}, [headCell('Feature'), ...columns])]),
    element('tbody', {}, card.features.map(featureMarkup)),
  ]);
  return element('section', { class: 'scroll', tabindex: 0, 'aria-label': caption }, [table]);
}

function headCell(heading: string, name?: string, unit?: string): Markup {
  const content =
    unit === undefined ? [heading] : [heading, ' ', element('span', { class: 'unit' }, [printedUnit(unit)])];
  return element('th', { scope: 'col', class: name }, content);
}

function featureMarkup({ name, speeds, acceleration, fan, limitedBy }: CardFeature): Markup {
  const cell = (content: string | Markup, className?: string) =>
    element('td', { class: className }, [content]);
  return element('tr', {}, [
    element('th', { scope: 'row' }, [name]),
    ...speeds.map((speed) =>
      cell(speed === null ? 'none' : element('strong', {}, [String(speed)]), 'number'),
    ),
    cell(String(acceleration), 'number'),
    cell(fan, 'number'),
    cell(limitedBy),
  ]);
}

function noteMarkup({ label, text }: CardNote): Markup {
  return element('li', {}, [element('strong', {}, [label]), ' ', text]);
}

function versionsText({ overleaf, versions, digest }: CardView): string {
  const behind = overleaf.length === 0 ? [] : [`Overleaf: ${overleaf.join(', ')}`];
  return [...behind, ...versions, digest].join(' · ');
}
