import type { JobFigures } from '../../decisions/compare/compare-figures.ts';
import { costNames } from '../../decisions/compare/hourly-costs.ts';
import { layerHeightOf } from '../../decisions/compare/job-at-layer-height.ts';
import type { PairingFigures } from '../../decisions/compare/pairing-figures.ts';
import { element, type HtmlAttributes, type Markup } from '../../text/html-element.ts';
import { capitalised } from '../../text/words.ts';
import type { Millimetres } from '../../units/canonical.ts';
import { clean } from '../../units/round-to-step.ts';
import { numberIn } from '../find/question-address.ts';
import { type NeedFields, type NeedName, priceNames } from './need-fields.ts';

/** Step of the slider for the layer height, in mm. */
const layerStep = 0.01;

/** Heights of layers between which a job can be tried: its own, and those at both ends. */
interface LayerRange {
  readonly usual: Millimetres;
  readonly low: Millimetres;
  readonly high: Millimetres;
}

/**
 * From a fifth of the smallest bore to four fifths of the largest, as far as the lines of the job are wide enough; null for
 * a job without layers above its first. Source: common practice, no source.
 */
export function layerRange({ paths }: JobFigures, pairings: readonly PairingFigures[]): LayerRange | null {
  const usual = layerHeightOf(paths);
  if (usual === null) return null;
  const { firstLayer: _, ...above } = paths.features;
  const widths = Object.values(above).flatMap((path) => ('lineWidth' in path ? [path.lineWidth] : []));
  const bores = pairings.map(({ bore }) => bore);
  const most = Math.min(...widths, 0.8 * Math.max(...bores));
  // Counted from the job's own height, so that the slider can come back to it.
  const steps = (length: Millimetres) => Math.floor(clean(length / layerStep));
  return {
    usual,
    low: clean(usual - Math.max(0, steps(usual - 0.2 * Math.min(...bores))) * layerStep),
    high: clean(usual + Math.max(0, steps(most - usual)) * layerStep),
  };
}

/** The fields of "do I need the speed?", filled as they were typed. */
export function needForm(
  jobs: readonly Pick<JobFigures, 'id' | 'name'>[],
  range: LayerRange | null,
  fields: NeedFields,
  { currency, machines }: { readonly currency: string; readonly machines: readonly string[] },
): Markup {
  const options = jobs.map(({ id, name }) =>
    element('option', { value: id, selected: id === fields.job ? true : undefined }, [`${name} (${id})`]),
  );
  return element('form', { id: 'need-form', class: 'find', 'aria-label': 'Do I need the speed?' }, [
    element('fieldset', {}, [
      element('legend', {}, ['The job']),
      field('job', 'Job', [element('select', idAndName('job'), options)]),
      ...(range === null ? [] : [layerField(range, fields.layer)]),
      shareField(fields.share),
    ]),
    element('fieldset', {}, [
      element('legend', {}, ['Money, as far as it is to count']),
      numberField('jobs', 'Jobs that pay for the machine', fields, 'numeric'),
      textField('currency', 'Currency', fields.currency || currency, { size: 4, maxlength: 3 }),
      ...machines.map((machine, index) =>
        numberField(priceNames[index] ?? 'price1', `Price of ${machine}`, fields),
      ),
      numberField('hour', 'Worth of a saved hour', fields),
      ...costNames.map((name) => numberField(name, `${capitalised(name)}, an hour`, fields)),
    ]),
    element('p', { class: 'ends' }, [
      element('button', { type: 'reset' }, ['As the job and the house rules say']),
    ]),
  ]);
}

/** What a slider stands at, in words. */
export function layerWords(height: Millimetres, { usual }: LayerRange): string {
  return height === usual ? `${height} mm, as the job has it` : `${height} mm instead of ${usual} mm`;
}

export function shareWords(percent: number): string {
  return percent === 100 ? '100 %, all that the house rules allow' : `${percent} %`;
}

function layerField(range: LayerRange, typed: string): Markup {
  const height = numberIn(typed) || range.usual;
  const [low, high] = [Math.min(range.low, height), Math.max(range.high, height)];
  const ends = { min: low, max: high, step: layerStep, value: height };
  return slider('layer', 'Layer height', ends, layerWords(height, range));
}

function shareField(typed: string): Markup {
  const percent = numberIn(typed) || 100;
  const ends = { min: Math.min(5, percent), max: 100, step: 1, value: percent };
  return slider('share', 'Share of the melt flow limit', ends, shareWords(percent));
}

function slider(name: NeedName, label: string, ends: HtmlAttributes, words: string): Markup {
  return field(name, label, [
    element('input', { ...idAndName(name), type: 'range', ...ends, 'aria-valuetext': words }),
    element('output', { for: `need-${name}` }, [words]),
  ]);
}

function numberField(name: NeedName, label: string, fields: NeedFields, mode = 'decimal'): Markup {
  return textField(name, label, fields[name], { size: 7, inputmode: mode });
}

function textField(name: NeedName, label: string, value: string, attributes: HtmlAttributes): Markup {
  const given = { ...idAndName(name), type: 'text', autocomplete: 'off', value, ...attributes };
  return field(name, label, [
    element('input', { ...given, 'aria-describedby': `need-${name}-wrong` }),
    element('small', { id: `need-${name}-wrong`, class: 'wrong' }),
  ]);
}

function field(name: NeedName, label: string, controls: readonly Markup[]): Markup {
  return element('div', {}, [element('label', { for: `need-${name}` }, [label]), ...controls]);
}

function idAndName(name: NeedName) {
  return { id: `need-${name}`, name };
}
