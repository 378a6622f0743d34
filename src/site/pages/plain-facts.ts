import { shapes } from '../../registry/generated/shapes.ts';
import type { Kind } from '../../registry/kind.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { isObject, isStatementShape, type Path, shapeAt } from '../../registry/shape.ts';
import type { Fact } from '../../text/document.ts';
import type { Text } from '../../text/inline.ts';
import { capitalised, wordsOf } from '../../text/words.ts';
import type { WayTo } from '../address.ts';
import { profileLink, writtenText } from './statement-table.ts';

/** What a page says elsewhere. */
const elsewhere: ReadonlySet<string> = new Set([
  'kind',
  'id',
  'notice',
  'invented',
  'fieldNotes',
  'acknowledged',
  'observations',
  'note',
]);

/** What a profile says besides its statements, key by key in the order of its file. */
export function plainFacts(profile: AnyProfile, registry: Registry, to: WayTo): Fact[] {
  const leaves = [...leavesIn(profile.data, [])].filter(({ path }) => !isInStatement(profile.kind, path));
  return leaves
    .filter(({ path: [key] }) => !elsewhere.has(String(key)))
    .map(({ path, value }) => [nameOf(path), valueText(profile, path, value, registry, to)]);
}

interface PlainLeaf {
  readonly path: Path;
  readonly value: unknown;
}

/** Values that are no mappings; a list of plain values and a range are one. */
function* leavesIn(value: unknown, path: Path): Generator<PlainLeaf> {
  if (Array.isArray(value) && value.some((item) => typeof item === 'object')) {
    for (const [index, item] of value.entries()) yield* leavesIn(item, [...path, index]);
  } else if (isObject(value) && !isRange(value)) {
    for (const [key, inner] of Object.entries(value)) yield* leavesIn(inner, [...path, key]);
  } else if (value !== undefined) yield { path, value };
}

function isRange(value: Record<string, unknown>): boolean {
  return 'low' in value && 'high' in value;
}

function isInStatement(kind: Kind, path: Path): boolean {
  return path.some((_, index) => {
    const shape = shapeAt(shapes[kind], path.slice(0, index));
    return shape !== null && isStatementShape(shape);
  });
}

/** `Hot ends 1, nozzles 2, diameter`. */
function nameOf(path: Path): string {
  const words = path
    .map((step) => (typeof step === 'number' ? ` ${step + 1}` : `, ${wordsOf(step)}`))
    .join('');
  return capitalised(words.slice(2));
}

function valueText(profile: AnyProfile, path: Path, value: unknown, registry: Registry, to: WayTo): Text {
  const shape = shapeAt(shapes[profile.kind], path);
  if (shape?.type === 'reference' && shape.to !== 'nozzle' && typeof value === 'string')
    return [profileLink(registry, shape.to, value, to)];
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (Array.isArray(value)) return value.map((each) => choiceWords(String(each))).join(', ');
  const written = writtenText(profile, path);
  return shape?.type === 'plain' ? choiceWords(written) : written;
}

/** A choice of a closed list is one word in camel case. */
function choiceWords(text: string): string {
  return /^[a-z]+(?:[A-Z][a-z]+)+$/.test(text) ? wordsOf(text) : text;
}
