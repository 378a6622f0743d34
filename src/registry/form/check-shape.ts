import { nearestWord } from '../../text/nearest-word.ts';
import type { QuantityProblem } from '../../units/parse-quantity.ts';
import { shapes } from '../generated/shapes.ts';
import { validators } from '../generated/validators.js';
import type { Hit } from '../hit.ts';
import type { Kind } from '../kind.ts';
import { migrationOfPlace } from '../migrations/migrations.ts';
import { fromPointer, leavesOf, type ObjectShape, type Path, toPointer } from '../shape.ts';
import { withExchangedTold } from './exchanged-quantities.ts';
import { normalise, readQuantity } from './normalise.ts';
import { prune } from './prune.ts';
import { quantityHit, type UnitsRule } from './quantity-rule.ts';
import { type ShapeHit, type ShapeRule, shapeMessage } from './shape-message.ts';
import type { ShapeError } from './shape-validator.ts';
import { withoutSplitNumbers } from './split-number.ts';

type ShapeStageHit = Hit & { readonly rule: ShapeRule | UnitsRule };

interface CheckedShape {
  readonly hits: readonly ShapeStageHit[];
  /** What could be read, quantities in canonical units; null when nothing of the document can be used. */
  readonly data: unknown;
  /** The path in the document as written of a path in the data, from which broken list items have gone. */
  readonly originalPath: (path: Path) => Path;
}

/**
 * Checks a document against the schema of its kind. What does not fit is reported and left out of the data,
 * so that later rules can still judge the rest.
 */
export function checkShape(kind: Kind, value: unknown): CheckedShape {
  const errors = schemaErrors(kind, value);
  const data = errors.length > 0 ? null : soundData(value, shapes[kind]);
  return data === null ? faultyShape(kind, value, errors) : { hits: [], data, originalPath: (path) => path };
}

/** The data of a document that its schema accepts, as most are; null where a quantity cannot be read. */
function soundData(value: unknown, shape: ObjectShape): unknown {
  let isSound = true;
  const data = normalise(value, shape, () => {
    isSound = false;
  });
  return isSound ? data : null;
}

function faultyShape(kind: Kind, value: unknown, errors: readonly ShapeError[]): CheckedShape {
  const shape = shapes[kind];
  const unreadable = unreadableQuantities(shape, value);
  const broken = new Set(unreadable.map((hit) => toPointer(hit.path)));
  const others = withoutEchoes(toldErrors(errors.filter((error) => !broken.has(error.instancePath))));
  const told = others.map((hit) => withMigration(hit, kind));
  const usable = prune(value, [...errors.map(placeToPrune), ...broken], (rest) =>
    schemaErrors(kind, rest).map(placeToPrune),
  );
  return {
    hits: withExchangedTold(withoutSplitNumbers([...unreadable, ...told], value), shape, value),
    data: usable === null ? null : normalise(usable.rest, shape, failOnUnreadable),
    originalPath: usable?.originalPath ?? ((path) => path),
  };
}

/** A mapping with more unknown keys than this is something else altogether, and is not told key by key. */
const mostUnknownKeys = 30;

function toldErrors(errors: readonly ShapeError[]): ShapeHit[] {
  const counts = new Map<string, number>();
  const told: { readonly error: ShapeError; readonly hit: ShapeHit }[] = [];
  for (const error of errors) {
    if (error.keyword === 'additionalProperties') {
      const count = (counts.get(error.instancePath) ?? 0) + 1;
      counts.set(error.instancePath, count);
      if (count > mostUnknownKeys) continue;
    }
    told.push({ error, hit: shapeMessage(error) });
  }
  return told.map(({ error, hit }) => {
    const count = error.keyword === 'additionalProperties' ? (counts.get(error.instancePath) ?? 0) : 0;
    return count > mostUnknownKeys ? withCount(hit, count) : hit;
  });
}

function withCount(hit: ShapeHit, count: number): ShapeHit {
  return { ...hit, message: `${hit.message}, one of ${count} such keys` };
}

function failOnUnreadable({ message }: QuantityProblem): never {
  throw new Error(`An unreadable quantity has not been left out: ${message}`);
}

/** An old shape is fixed by its migration, not by what a key that resembles it suggests. */
function withMigration(hit: ShapeHit, kind: Kind): ShapeHit {
  const migration = hit.rule === 'shape/unknown-key' ? migrationOfPlace(kind, hit.path) : undefined;
  if (migration === undefined) return hit;
  return { ...hit, help: `Run \`meltbounds migrate\`: ${migration.title}.` };
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

/** Of what is said about one value, the first of these tells most. */
const mostTelling: readonly ShapeRule[] = [
  'shape/not-a-choice',
  'shape/wrong-type',
  'shape/size',
  'shape/date-form',
  'shape/text-form',
];

/** One slip, one finding: a misspelled key also leaves its right name missing, a wrong value often breaks two rules. */
function withoutEchoes(hits: readonly ShapeHit[]): ShapeHit[] {
  const unknown = unknownKeys(hits);
  const first = new Map<string, ShapeHit>();
  for (const hit of hits.filter(({ rule }) => mostTelling.includes(rule)).sort(byTelling)) {
    const pointer = toPointer(hit.path);
    if (!first.has(pointer)) first.set(pointer, hit);
  }
  return hits.filter((hit) => {
    if (hit.rule === 'shape/missing-key') return !isMisspelled(unknown.get(toPointer(hit.path)) ?? [], hit);
    return hit.rule === 'shape/unknown-key' || first.get(toPointer(hit.path)) === hit;
  });
}

/** The unknown keys of each mapping, by its pointer: comparing each with each takes minutes for a hostile file. */
function unknownKeys(hits: readonly ShapeHit[]): ReadonlyMap<string, readonly string[]> {
  const keys = new Map<string, string[]>();
  for (const { rule, path } of hits) {
    if (rule !== 'shape/unknown-key') continue;
    const mapping = toPointer(path.slice(0, -1));
    const known = keys.get(mapping) ?? [];
    known.push(String(path.at(-1)));
    keys.set(mapping, known);
  }
  return keys;
}

function isMisspelled(unknown: readonly string[], missing: ShapeHit): boolean {
  return unknown.some((key) => nearestWord(key, [missing.allowed ?? '']) !== null);
}

function byTelling(a: ShapeHit, b: ShapeHit): number {
  return mostTelling.indexOf(a.rule) - mostTelling.indexOf(b.rule);
}

/** Place whose removal fixes an error: the unknown key itself, else the value that does not fit. */
function placeToPrune(error: ShapeError): string {
  if (error.keyword !== 'additionalProperties') return error.instancePath;
  return toPointer([...fromPointer(error.instancePath), String(error.params.additionalProperty)]);
}
