import type { Finding } from '../../src/registry/finding.ts';
import { parsingChanges } from '../../src/registry/load-files.ts';
import type { AnyProfile } from '../../src/registry/profile.ts';
import { toPointer } from '../../src/registry/shape.ts';
import { checkRegistry } from '../../src/rules/engine/check-registry.ts';
import { randomSource } from '../../src/statistics/random.ts';
import { loadTexts } from '../slips/planted-registry.ts';
import { writtenQuantities } from '../slips/quantity-slips.ts';
import { rangeAt, type Texts } from '../slips/slip.ts';
import { type WrittenQuantity, withNumbers } from '../slips/written-quantity.ts';

/** How far true quantities are moved, up and down. */
export const factors: readonly number[] = [1.05, 1.1, 1.2, 1.5, 2, 3, 5, 10];

/** The smallest factor by which one true quantity has to be moved until a rule warns, and which one that is. */
export interface RuleDistance {
  readonly factor: number;
  readonly file: string;
  readonly pointer: string;
  readonly before: string;
  readonly after: string;
}

interface Sample {
  /** Of the quantities of the corpus. */
  readonly count: number;
  readonly seed: string;
  readonly today: string;
}

/**
 * How near each rule comes to true profiles: quantities of theirs are moved by ever larger factors, one at a time, until
 * the rule gives an error or a warning at that file. Rules that are raised by none of it are left out.
 */
export function ruleDistances(texts: Texts, { count, seed, today }: Sample): Map<string, RuleDistance> {
  const check = checking(texts, today);
  const nearest = new Map<string, RuleDistance>();
  for (const quantity of sampled(allQuantities(texts), count, seed)) {
    for (const [rule, distance] of raisedBy(quantity, check)) {
      const known = nearest.get(rule);
      if (known === undefined || distance.factor < known.factor) nearest.set(rule, distance);
    }
  }
  return nearest;
}

type Check = (file: string, text: string) => readonly Finding[];

/** The rules that moving one quantity raises, each with the smallest factor that does. */
function raisedBy(quantity: WrittenQuantity, check: Check): Map<string, RuleDistance> {
  const { relativePath: file, text } = quantity.profile.source;
  const pointer = toPointer(quantity.leaf.path);
  const before = new Set(check(file, text).map(({ rule }) => rule));
  const raised = new Map<string, RuleDistance>();
  for (const factor of factors) {
    for (const times of [factor, 1 / factor]) {
      const after = withNumbers(quantity, (value) => Number((value * times).toPrecision(4)));
      const rules = check(file, moved(quantity, after)).map(({ rule }) => rule);
      for (const rule of rules.filter((each) => !before.has(each) && !raised.has(each))) {
        raised.set(rule, { factor, file, pointer, before: quantity.text, after });
      }
    }
  }
  return raised;
}

function allQuantities(texts: Texts): WrittenQuantity[] {
  const { registry } = loadTexts(texts);
  return registry.profiles.filter(({ kind }) => kind !== 'polymer').flatMap(quantitiesOf);
}

function quantitiesOf(profile: AnyProfile): WrittenQuantity[] {
  return writtenQuantities(profile).filter(({ numbers }) => numbers.some(({ digits }) => Number(digits) > 0));
}

function sampled<Item>(items: readonly Item[], count: number, seed: string): Item[] {
  const random = randomSource(seed);
  return items
    .map((item) => ({ item, lot: random.uniform() }))
    .sort((one, other) => one.lot - other.lot)
    .slice(0, count)
    .map(({ item }) => item);
}

function moved({ profile, leaf }: WrittenQuantity, after: string): string {
  const { text } = profile.source;
  const [start, end] = rangeAt(profile, leaf.path) ?? [0, 0];
  return `${text.slice(0, start)}'${after}'${text.slice(end)}`;
}

/** Errors and warnings of one file among the others, with another text in it. */
function checking(texts: Texts, today: string): Check {
  const parse = parsingChanges();
  return (file, text) =>
    checkRegistry(loadTexts(new Map([...texts, [file, text]]), parse), {
      today,
      wants: (each) => each === file,
    }).filter(({ severity }) => severity !== 'note');
}
