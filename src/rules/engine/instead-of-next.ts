import { groupedBy } from '../../registry/grouped-by.ts';
import type { ToldRow } from './told-rows.ts';

/** Settings that show that they lie at even distances, and what these differ by (common practice, no source). */
const fewestLevels = 5;
const evenWithin = 0.02;

/** The rows of one setting, and those of the same setting that stand where the next one belongs. */
interface Instead {
  readonly rows: readonly ToldRow[];
  readonly originals: readonly ToldRow[];
}

/**
 * Rows that were pasted over those of the next setting: settings at even distances, each as often, but for one that stands twice
 * as often, the second time with the same readings, and the one behind it, which is missing.
 */
export function insteadOfNext(all: readonly ToldRow[]): Instead | null {
  const levels = [...groupedBy(all, ({ level }) => String(level)).values()].sort(
    (one, other) => levelOf(one) - levelOf(other),
  );
  const most = Math.max(...levels.map((rows) => rows.length));
  const [twice, ...more] = levels.filter((rows) => rows.length === most);
  const [first, last] = [twice?.[0], twice?.at(-1)];
  if (
    twice === undefined ||
    first === undefined ||
    last === undefined ||
    more.length > 0 ||
    levels.length < fewestLevels
  )
    return null;
  const half = most / 2;
  if (levels.some((rows) => rows !== twice && rows.length !== half)) return null;
  const [originals, rows] = [twice.slice(0, half), twice.slice(half)];
  const isSame = rows.every(({ all: text }, index) => text === originals[index]?.all);
  // A second pass that begins at the same setting stands elsewhere.
  const isOneBlock = all.indexOf(last) - all.indexOf(first) === most - 1;
  return isSame && isOneBlock && isNextMissing(levels, levels.indexOf(twice)) ? { rows, originals } : null;
}

function isNextMissing(levels: readonly (readonly ToldRow[])[], place: number): boolean {
  const steps = levels.slice(1).map((rows, index) => levelOf(rows) - levelOf(levels[index]));
  const behind = steps[place];
  const [usual = Number.NaN, ...others] = steps.toSpliced(place, 1);
  const isEven = (step: number, expected: number) => Math.abs(step / expected - 1) < evenWithin;
  return behind !== undefined && isEven(behind, 2 * usual) && others.every((step) => isEven(step, usual));
}

function levelOf(rows: readonly ToldRow[] | undefined): number {
  return rows?.[0]?.level ?? Number.NaN;
}
