import type { Hit } from '../hit.ts';
import { isObject, type Path, toPointer } from '../shape.ts';
import type { UnitsRule } from './quantity-rule.ts';
import type { ShapeRule } from './shape-message.ts';

type FormHit = Hit & { readonly rule: ShapeRule | UnitsRule };

/**
 * One finding where a decimal comma has split a value between braces, `{value: 1,24 g/cm3}`: YAML reads a number and a key, and
 * both would be wrong by themselves.
 */
export function withoutSplitNumbers(hits: readonly FormHit[], document: unknown): FormHit[] {
  const rests = new Map(
    hits.filter(isRestOfNumber).flatMap((hit) => {
      const before = keyBefore(document, hit.path);
      return before === null ? [] : [[toPointer(before), hit] as const];
    }),
  );
  if (rests.size === 0) return [...hits];
  const told = new Set<FormHit>();
  const merged = hits.map((hit) => {
    const rest = hit.rule.startsWith('units/') ? rests.get(toPointer(hit.path)) : undefined;
    if (rest === undefined) return hit;
    told.add(rest);
    return splitNumber(hit, String(rest.path.at(-1)));
  });
  return merged.filter((hit) => !told.has(hit));
}

function isRestOfNumber({ rule, path }: FormHit): boolean {
  return rule === 'shape/unknown-key' && /^\d+\b/.test(String(path.at(-1)));
}

/** The key that stands before one in its mapping. */
function keyBefore(document: unknown, path: Path): Path | null {
  const mapping = path.slice(0, -1).reduce<unknown>((value, step) => {
    if (Array.isArray(value)) return value[Number(step)];
    return isObject(value) ? value[step] : undefined;
  }, document);
  if (!isObject(mapping)) return null;
  const keys = Object.keys(mapping);
  const before = keys[keys.indexOf(String(path.at(-1))) - 1];
  return before === undefined ? null : [...path.slice(0, -1), before];
}

function splitNumber(hit: FormHit, rest: string): FormHit {
  const whole = hit.found ?? '';
  return {
    ...hit,
    rule: 'units/number-form',
    message: `A comma has split a number: ${whole} stands as the value, "${rest}" as a key`,
    found: `${whole},${rest}`,
    allowed: 'a decimal point, and thousands that are not grouped',
    help: `Write \`${whole}.${rest}\` if the comma is the decimal sign; leave it out if it groups thousands.`,
  };
}
