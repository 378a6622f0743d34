import { shapes } from './generated/shapes.ts';
import { validators } from './generated/validators.js';
import type { Hit } from './hit.ts';
import type { Kind } from './kind.ts';
import { nearestWord } from './nearest-word.ts';
import { normalise, readQuantity } from './normalise.ts';
import { prune } from './prune.ts';
import { quantityHit, type UnitsRule } from './quantity-rule.ts';
import { fromPointer, leavesOf, type ObjectShape, toPointer } from './shape.ts';
import { type ShapeHit, type ShapeRule, shapeMessage } from './shape-message.ts';
import type { ShapeError } from './shape-validator.ts';

export type ShapeStageHit = Hit & { readonly rule: ShapeRule | UnitsRule };

export interface CheckedShape {
  readonly hits: readonly ShapeStageHit[];
  /** What could be read, quantities in canonical units; null when nothing of the document can be used. */
  readonly data: unknown;
}

/**
 * Holds a document against the schema of its kind. What does not fit is reported and left out of the data,
 * so that later rules can still judge the rest.
 */
export function checkShape(kind: Kind, value: unknown): CheckedShape {
  const shape = shapes[kind];
  const errors = schemaErrors(kind, value);
  const unreadable = unreadableQuantities(shape, value);
  const broken = new Set(unreadable.map((hit) => toPointer(hit.path)));
  const others = withoutEchoes(
    errors.filter((error) => !broken.has(error.instancePath)).map((error) => shapeMessage(error)),
  );
  const usable = prune(value, [...errors.map(placeToPrune), ...broken], (rest) =>
    schemaErrors(kind, rest).map(placeToPrune),
  );
  return { hits: [...unreadable, ...others], data: usable === undefined ? null : normalise(usable, shape) };
}

function schemaErrors(kind: Kind, value: unknown): readonly ShapeError[] {
  const validate = validators[kind];
  return validate(value) ? [] : (validate.errors ?? []);
}

function unreadableQuantities(shape: ObjectShape, value: unknown): ShapeStageHit[] {
  const hits: ShapeStageHit[] = [];
  for (const leaf of leavesOf('quantity', shape, value)) {
    const read = readQuantity(leaf.value, leaf.shape);
    if (!read.ok) hits.push(quantityHit(read.error, leaf.path));
  }
  return hits;
}

/** A misspelled key is unknown and leaves its right name missing: one slip, so one finding. */
function withoutEchoes(hits: readonly ShapeHit[]): ShapeHit[] {
  const unknown = hits.filter((hit) => hit.rule === 'shape/unknown-key');
  return hits.filter(
    (hit) =>
      hit.rule !== 'shape/missing-key' ||
      !unknown.some(
        ({ path }) =>
          toPointer(path.slice(0, -1)) === toPointer(hit.path) &&
          nearestWord(String(path.at(-1)), [hit.allowed ?? '']) !== null,
      ),
  );
}

/** Place whose removal mends an error: the unknown key itself, else the value that does not fit. */
function placeToPrune(error: ShapeError): string {
  if (error.keyword !== 'additionalProperties') return error.instancePath;
  return toPointer([...fromPointer(error.instancePath), String(error.params.additionalProperty)]);
}
