import type { Hit } from '../hit.ts';
import { isObject, type ObjectShape, type Path, shapeAt, toPointer } from '../shape.ts';
import { readQuantity } from './normalise.ts';
import type { UnitsRule } from './quantity-rule.ts';
import type { ShapeRule } from './shape-message.ts';

type FormHit = Hit & { readonly rule: ShapeRule | UnitsRule };

/** One finding where two keys of a mapping hold quantities that each fit the other one, and not two that invite new numbers. */
export function withExchangedTold(
  hits: readonly FormHit[],
  shape: ObjectShape,
  document: unknown,
): FormHit[] {
  const wrong = hits.filter(({ rule }) => rule === 'units/wrong-dimension');
  const gone = new Set<FormHit>();
  const instead = new Map<FormHit, FormHit>();
  for (const [index, one] of wrong.entries()) {
    if (gone.has(one)) continue;
    const other = wrong
      .slice(index + 1)
      .find((each) => areSiblings(one.path, each.path) && areExchanged(one.path, each.path, shape, document));
    if (other === undefined) continue;
    gone.add(other);
    instead.set(one, exchanged(one, other, document));
  }
  return hits.flatMap((hit) => instead.get(hit) ?? (gone.has(hit) ? [] : hit));
}

function areSiblings(one: Path, other: Path): boolean {
  return toPointer(one.slice(0, -1)) === toPointer(other.slice(0, -1));
}

function areExchanged(one: Path, other: Path, shape: ObjectShape, document: unknown): boolean {
  const [oneShape, otherShape] = [shapeAt(shape, one), shapeAt(shape, other)];
  return (
    oneShape?.type === 'quantity' &&
    otherShape?.type === 'quantity' &&
    readQuantity(valueAt(document, other), oneShape).ok &&
    readQuantity(valueAt(document, one), otherShape).ok
  );
}

function valueAt(document: unknown, path: Path): unknown {
  return path.reduce<unknown>((value, step) => {
    if (Array.isArray(value)) return value[Number(step)];
    return isObject(value) ? value[step] : undefined;
  }, document);
}

function exchanged(one: FormHit, other: FormHit, document: unknown): FormHit {
  const [name, otherName] = [one, other].map(({ path }) => String(path.at(-1)));
  const [value, otherValue] = [one, other].map(({ path }) => String(valueAt(document, path)));
  return {
    ...one,
    message: `"${name}" and "${otherName}" hold each other's values: ${value} and ${otherValue}`,
    found: `${value}, ${otherValue}`,
    help: `Exchange them: \`${name}: ${otherValue}\` and \`${otherName}: ${value}\`.`,
  };
}
