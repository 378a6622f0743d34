import { wordsOf } from '../../text/words.ts';
import { parseUnit } from '../../units/parse-quantity.ts';
import type { ColumnPlan } from './column-plan.ts';

/** A heading split into what it names and its unit, both as text. */
export interface NamedUnit {
  readonly name: string;
  readonly unit: string;
}

/** What a heading may mean. */
type HeadingMeaning =
  /** A column of the method, or a name that none of them has. */
  | { readonly kind: 'column'; readonly written: NamedUnit }
  /** Words that several columns of the method have in common. */
  | { readonly kind: 'several'; readonly names: readonly string[] }
  | { readonly kind: 'note' }
  | { readonly kind: 'malformed' };

/** More characters than a heading has; a stranger's sheet may hold a million without an end. */
const longestHeading = 200;

const noteHeading = /^(?:notes?|remarks?|comments?)$/i;

/** `name [unit]`; a unit may hold brackets itself: `feedSpeed [[in_i]/min]`. */
const inBrackets = /^([^[\]]*?)\s*\[(.*)\]$/;

/** Other ways to write a unit behind a name, each tried from the left: `mass (g)`, `mass / g`, `mass, g`, `mass in g`, `mass_g`. */
const otherForms = [
  /^([^(]*?)\s*\((.+)\)$/,
  /^(.+?)\s+\/\s*(\S.*)$/,
  /^(.+?)\s*,\s*(\S.*)$/,
  /^(.+?)\s+in\s+(\S.*)$/i,
  /^(.*\S)[\s_]+(\S+)$/,
];

/** What a heading means to a method, whatever its capitals, its brackets and the words that it leaves out. */
export function meaningOf(heading: string, plan: ColumnPlan): HeadingMeaning {
  if (noteHeading.test(heading)) return { kind: 'note' };
  if (heading.length > longestHeading) return { kind: 'malformed' };
  const bracketed = splitBy(inBrackets, heading);
  const others = otherForms.flatMap((form) => splitBy(form, heading) ?? []);
  const counted = { name: heading, unit: '{count}' };
  const forms = bracketed === null ? [...others, counted] : [bracketed];
  const fits = forms.map((form) => ({ form, names: fittingColumns(form, plan) }));
  const found = fits.find(({ names }) => names.length === 1) ?? fits.find(({ names }) => names.length > 1);
  if (found !== undefined) {
    const [name = '', ...more] = found.names;
    return more.length === 0
      ? { kind: 'column', written: { name, unit: found.form.unit } }
      : { kind: 'several', names: found.names };
  }
  const named = bracketed ?? splitBy(otherForms[0] ?? inBrackets, heading);
  return named === null
    ? { kind: 'malformed' }
    : { kind: 'column', written: { ...named, name: nearestName(named.name, plan) } };
}

function splitBy(form: RegExp, heading: string): NamedUnit | null {
  const [, name = '', unit = ''] = form.exec(heading) ?? [];
  return name === '' ? null : { name, unit };
}

/** The columns of that name or with these words, whose dimension has the unit. */
function fittingColumns({ name, unit }: NamedUnit, { columns }: ColumnPlan): string[] {
  return namedColumns(name, { columns }).filter((column) => {
    const dimension = columns[column];
    return dimension !== undefined && parseUnit(unit, dimension).ok;
  });
}

function namedColumns(name: string, { columns }: ColumnPlan): string[] {
  if (Object.hasOwn(columns, name)) return [name];
  const words = wordsIn(name);
  const joined = words.join('');
  const known = Object.keys(columns).map((column) => ({ column, words: wordsIn(column) }));
  const whole = known.filter((each) => each.words.join('') === joined);
  const partly = known.filter((each) => words.length > 0 && words.every((word) => each.words.includes(word)));
  return (whole.length > 0 ? whole : partly).map(({ column }) => column);
}

/** The one column that the words name, so that a wrong unit is told and not a wrong name. */
function nearestName(name: string, plan: ColumnPlan): string {
  const [only, ...more] = namedColumns(name, plan);
  return only === undefined || more.length > 0 ? name : only;
}

function wordsIn(name: string): string[] {
  return wordsOf(name.replace(/^[A-Z\s_-]+$/, (capitals) => capitals.toLowerCase()))
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}
