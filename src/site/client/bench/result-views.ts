import { element, type Markup } from '../../../text/html-element.ts';
import { capitalised, counted } from '../../../text/words.ts';
import type { Draft } from '../../bench/draft.ts';
import type { IntervalAdvice } from '../../bench/interval-advice.ts';
import type { MeasuredRun } from '../../bench/measured.ts';
import type { NextStep } from '../../bench/plan-draft.ts';
import type { ReducedDraft } from '../../bench/reduce-draft.ts';
import { fileLink } from './file-link.ts';
import { settingText } from './rows-form.ts';
import { button } from './run-page.ts';

/** Markup as a text for a place of the page. */
export function joined(parts: readonly Markup[]): string {
  return parts.map(({ markup }) => markup).join('\n');
}

/** The first result, large, or why there is none yet. */
export function limitMarkup({ results, answer, problems, count, open }: ReducedDraft): string {
  const rows = `${counted(count, 'row')}${open.length === 0 ? '' : `, ${open.length} not complete`}`;
  const [first] = results;
  if (answer === null || first === undefined) {
    return joined([element('span', {}, [`No result yet: ${problems[0]?.text ?? rows}`])]);
  }
  return joined([resultMarkup(first), element('small', {}, [`from ${rows}`])]);
}

/** What the readings give besides. */
export function otherResultsMarkup({ results }: ReducedDraft): string {
  return joined(results.slice(1).map((result) => element('p', {}, [resultMarkup(result)])));
}

function resultMarkup({ name, value, interval, remark }: ReducedDraft['results'][number]): Markup {
  return element('span', {}, [
    `${capitalised(name)} `,
    element('strong', {}, [value]),
    interval === '' ? '' : ` 95 % interval ${interval}`,
    remark === '' ? '' : `: ${remark}`,
    ' ',
  ]);
}

export function plotMarkup({ plot }: ReducedDraft, id: string): string {
  if (plot === null) return '';
  return joined([
    element('figure', {}, [
      { markup: plot.svg.trimEnd() },
      element('figcaption', {}, [
        fileLink('Numbers (CSV)', `${id}-curve.csv`, plot.csv),
        ' ',
        fileLink('Picture (SVG)', `${id}-curve.svg`, plot.svg),
      ]),
    ]),
  ]);
}

/** What is wrong, and what to know before relying on the results. */
export function warningMarkup({ warnings, problems }: ReducedDraft): string {
  const texts = [...problems.slice(1).map(({ text }) => text), ...warnings];
  return joined(texts.map((text) => element('li', {}, [element('strong', {}, ['Warning:']), ' ', text])));
}

/** Which step is next, which reading stands in the way, and where another one would help most. */
export function adviceMarkup(next: NextStep | null, advice: IntervalAdvice | null, draft: Draft): string {
  const { widest = null, again = null } = advice ?? {};
  const names = (rows: readonly string[]) =>
    [...new Set(rows.map((row) => settingText(draft, row)))].join(', ');
  const readingOf = (name: string) => {
    const row = draft.rows.find((each) => each.name === name);
    const read = draft.head.columns.flatMap(({ isGiven }, place) =>
      isGiven ? [] : [row?.cells[place] ?? ''],
    );
    return read.join(', ');
  };
  return joined([
    ...(next === null ? [] : [nextMarkup(next)]),
    ...(widest === null
      ? []
      : [
          element('p', {}, [
            `The reading ${readingOf(widest.rows[0] ?? '')} at ${names(widest.rows)} widens the interval most: without it ${widest.interval}. Read it again before you leave it out.`,
          ]),
        ]),
    ...(again === null || next !== null
      ? []
      : [
          element('p', {}, [
            `Reading ${names(again.rows)} again would narrow the interval most: to ${again.interval}, if it comes out the same.`,
          ]),
        ]),
  ]);
}

function nextMarkup({ answer, why, given }: NextStep): Markup {
  return element('div', {}, [
    element('p', {}, [
      element('strong', {}, ['Next: ']),
      answer,
      ' ',
      ...(given === null ? [] : [button('next', 'Add this row')]),
    ]),
    ...(why.length === 0
      ? []
      : [
          element('details', {}, [
            element('summary', {}, ['Why']),
            element(
              'ul',
              {},
              why.map((text) => element('li', {}, [text])),
            ),
          ]),
        ]),
  ]);
}

export function measuredMarkup(runs: readonly MeasuredRun[]): string {
  if (runs.length === 0) return joined([element('p', {}, ['Nothing yet: this run is the first.'])]);
  return joined([
    element(
      'ul',
      {},
      runs.map(({ trial, page, date, isSimulated, method, temperature, results }) =>
        element('li', {}, [
          element('a', { href: page }, [trial]),
          ` ${[date, method, temperature, isSimulated ? 'simulated' : ''].filter((word) => word !== '').join(', ')}: ${results.join('; ') || 'no result'}`,
        ]),
      ),
    ),
  ]);
}
