import {
  type ComparisonTerms,
  compareFigures,
  type JobFigures,
} from '../../decisions/compare/compare-figures.ts';
import type { Comparison } from '../../decisions/compare/comparison.ts';
import { comparisonRemarks, comparisonTitle } from '../../decisions/compare/comparison-document.ts';
import { comparisonBlocks } from '../../decisions/compare/comparison-grid.ts';
import { originSentence } from '../../knowledge/origin.ts';
import { formatHtmlBlock } from '../../text/format-html.ts';
import { element, type Markup } from '../../text/html-element.ts';
import { problemLine } from '../../text/problem-text.ts';
import { capitalised } from '../../text/words.ts';
import { documentInPrint } from '../../units/in-print.ts';
import { needCommand } from './need-command.ts';
import { needPlot, type TitledFigures } from './need-plot.ts';
import { plotFigure } from './plot-figure.ts';

/** The answer to "do I need the speed?": one sentence, and the figures that it rests on. */
interface NeedAnswer {
  readonly sentence: string;
  /** What of it is simulated or invented; nothing where all is real. */
  readonly origin: readonly Markup[];
  readonly figures: readonly Markup[];
}

/** What the command says of a job on pairings, for a page: the same sentence, figures, notes, warnings and cautions. */
export function needAnswer(
  job: JobFigures,
  pairings: readonly TitledFigures[],
  terms: ComparisonTerms,
): NeedAnswer {
  const figures = pairings.map((pairing) => pairing.figures);
  const compared = compareFigures(job, figures, terms);
  if (!compared.ok) return { sentence: problemLine(compared.error), origin: [], figures: [] };
  const { layerHeight, meltShare = 1 } = terms;
  const plot = needPlot(job, pairings, { meltShare, ...(layerHeight !== undefined && { layerHeight }) });
  const remarks = documentInPrint({ title: null, blocks: comparisonRemarks(compared.value) }).blocks;
  const command = needCommand(job.id, figures, terms);
  return {
    sentence: compared.value.answer,
    origin: unreal(compared.value),
    figures: [
      figuresTable(compared.value, pairings),
      ...(plot === null
        ? []
        : [
            plotFigure(plot, 'The time of the job with each share of what the house rules let melt.', 'time'),
          ]),
      ...remarks.map((block) => formatHtmlBlock(block, 3)),
      element('p', {}, [
        command === null
          ? 'The command `compare` takes one set of house rules, and these pairings follow several.'
          : 'The same figures on a terminal:',
      ]),
      ...(command === null ? [] : [element('pre', {}, [element('code', {}, [command])])]),
    ],
  };
}

function unreal({ origin }: Comparison): Markup[] {
  const sentence = originSentence(origin);
  if (sentence === null) return [];
  return [element('div', { class: 'unreal' }, [element('p', {}, [element('strong', {}, [sentence])])])];
}

/** A column a pairing, a row a figure. */
function figuresTable(comparison: Comparison, pairings: readonly TitledFigures[]): Markup {
  const caption = comparisonTitle(comparison);
  const [summary, ...blocks] = comparisonBlocks(comparison);
  const titles = pairings.map(({ title }) => element('th', { scope: 'col' }, [title]));
  const table = element('table', { class: 'need-figures' }, [
    element('caption', {}, [caption]),
    element('thead', {}, [element('tr', {}, [element('td', {}), ...titles])]),
    element(
      'tbody',
      {},
      (summary?.rows ?? []).map((row, index) => figuresRow(row, index === 0)),
    ),
    ...blocks.map(({ heading, rows }) =>
      element('tbody', {}, [
        element('tr', {}, [
          element('th', { scope: 'rowgroup', colspan: pairings.length + 1 }, [capitalised(heading)]),
        ]),
        ...rows.map((row) => figuresRow(row, false)),
      ]),
    ),
  ]);
  return element('section', { class: 'scroll', tabindex: 0, 'aria-label': caption }, [table]);
}

function figuresRow([label, ...cells]: readonly [string, ...string[]], isLarge: boolean): Markup {
  return element('tr', {}, [
    element('th', { scope: 'row' }, [label]),
    ...cells.map((cell) => element('td', {}, [isLarge ? element('strong', {}, [cell]) : cell])),
  ]);
}
