import type { JobFigures } from '../../decisions/compare/compare-figures.ts';
import { beadWarnings } from '../../decisions/compare/job-filament.ts';
import type { Markup } from '../../text/html-element.ts';
import type { ComparedPairing } from '../compare/compared-pairing.ts';
import { needAnswer } from '../compare/need-answer.ts';
import {
  machinesOf,
  type NeedFields,
  needFieldsOf,
  needFragment,
  needNames,
  readNeed,
} from '../compare/need-fields.ts';
import { layerRange, layerWords, needForm, shareWords } from '../compare/need-form.ts';
import type { TitledFigures } from '../compare/need-plot.ts';
import { stateOf } from '../find/question-address.ts';

/** What is asked about: jobs of the registry, and pairings of which figures are known. */
interface NeedContext {
  readonly section: HTMLElement;
  readonly jobs: readonly JobFigures[];
  readonly pairings: readonly TitledFigures[];
}

/** Asks "do I need the speed?" below compared pairings; all that is asked stands in the address. */
export function startNeed(
  section: HTMLElement,
  jobs: readonly JobFigures[],
  compared: readonly ComparedPairing[],
): void {
  const pairings = compared.flatMap(({ title, figures }) => (figures === null ? [] : [{ title, figures }]));
  const context = { section, jobs, pairings };
  if (jobs.length === 0 || pairings.length === 0) return;
  section.hidden = false;
  showForm(context, withJob(context, needFieldsOf(location.hash)));
}

/** The first job that every nozzle can print well, unless one is asked for. */
function withJob(context: NeedContext, fields: NeedFields): NeedFields {
  const { jobs } = context;
  if (jobs.some(({ id }) => id === fields.job)) return fields;
  const fitting = jobs.find(({ paths }) =>
    figuresOf(context).every((figures) => beadWarnings(figures, paths).length === 0),
  );
  return { ...fields, job: (fitting ?? jobs[0])?.id ?? '' };
}

function showForm(context: NeedContext, fields: NeedFields): void {
  const { section, jobs } = context;
  const job = jobs.find(({ id }) => id === fields.job);
  const place = section.querySelector('#need-fields');
  if (job === undefined || place === null) return;
  const range = layerRange(job, figuresOf(context));
  place.innerHTML = needForm(jobs, range, fields, {
    currency: usualCurrency(context),
    machines: machinesOf(figuresOf(context)),
  }).markup;
  const form = place.querySelector('form');
  let typed = fields;
  form?.addEventListener('input', ({ target }) => {
    if (!(target instanceof HTMLInputElement || target instanceof HTMLSelectElement)) return;
    typed = withTyped(typed, target, { ...context, usual: range?.usual });
    // Other jobs have other layers.
    if (typed.job !== job.id) {
      showForm(context, { ...typed, layer: '' });
      section.querySelector<HTMLSelectElement>('#need-job')?.focus();
    } else showAnswer(context, job, typed);
  });
  form?.addEventListener('submit', (event) => event.preventDefault());
  form?.addEventListener('reset', (event) => {
    event.preventDefault();
    showForm(context, withJob(context, needFieldsOf(`job=${encodeURIComponent(job.id)}`)));
    section.querySelector<HTMLButtonElement>('button')?.focus();
  });
  showAnswer(context, job, fields);
}

function showAnswer(context: NeedContext, job: JobFigures, fields: NeedFields): void {
  const { section, pairings } = context;
  const { terms, wrong } = readNeed(fields, usualCurrency(context), machinesOf(figuresOf(context)));
  const range = layerRange(job, figuresOf(context));
  if (range !== null) say(section, 'layer', layerWords(terms.layerHeight ?? range.usual, range));
  say(section, 'share', shareWords(Math.round(1000 * (terms.meltShare ?? 1)) / 10));
  for (const name of needNames) markWrong(section, name, wrong.includes(name));
  const { sentence, origin, figures } = needAnswer(job, pairings, terms);
  put(section, '#need-origin', origin);
  const told = section.querySelector('#need-told');
  if (told !== null && told.textContent !== sentence) told.textContent = sentence;
  put(section, '#need-figures', figures);
  const chosen = stateOf(location.hash).chosen;
  history.replaceState(null, '', `#${needFragment(chosen, fields)}`);
}

function put(section: HTMLElement, place: string, content: readonly Markup[]): void {
  const found = section.querySelector(place);
  const markup = content.map((each) => each.markup).join('\n');
  // What is the same stays, so that nothing is told or focused anew.
  if (found !== null && found.innerHTML !== markup) found.innerHTML = markup;
}

/** The fields with the one that was changed; what is as the job and the house rules say is left out. */
function withTyped(
  fields: NeedFields,
  { name, value }: HTMLInputElement | HTMLSelectElement,
  context: NeedContext & { readonly usual: number | undefined },
): NeedFields {
  const usual: Readonly<Record<string, string>> = {
    ...{ layer: String(context.usual), share: '100', currency: usualCurrency(context) },
  };
  const typed = name === 'layer' ? String(Math.round(1000 * Number(value)) / 1000) : value.trim();
  return { ...fields, [name]: typed === usual[name] ? '' : typed };
}

function say(section: HTMLElement, name: string, words: string): void {
  const output = section.querySelector(`output[for="need-${name}"]`);
  if (output !== null) output.textContent = words;
  section.querySelector(`#need-${name}`)?.setAttribute('aria-valuetext', words);
}

function markWrong(section: HTMLElement, name: string, isWrong: boolean): void {
  const input = section.querySelector(`input#need-${name}`);
  const words = section.querySelector(`#need-${name}-wrong`);
  if (input === null || words === null) return;
  input.setAttribute('aria-invalid', String(isWrong));
  words.textContent = isWrong ? 'Not read, so it does not count.' : '';
}

function figuresOf({ pairings }: NeedContext) {
  return pairings.map(({ figures }) => figures);
}

/** That of the first price that the registry states. */
function usualCurrency(context: NeedContext): string {
  const prices = figuresOf(context).flatMap(({ price, spoolPrice }) => [price, spoolPrice]);
  return prices.find((price) => price !== null)?.value.currency ?? 'EUR';
}
