import { isCollection, isScalar, Scalar } from 'yaml';
import { shapes } from '../generated/shapes.ts';
import type { ReadDocument } from '../profile.ts';
import { leavesOf, type Path } from '../shape.ts';
import type { TextEdit } from '../yaml/text-edit.ts';
import { placeAt, type YamlDocument } from '../yaml/yaml-document.ts';
import { canonicalSpelling, type Spelling } from './canonical-spelling.ts';

/** A quantity that is spelled otherwise than in UCUM codes and canonical numbers, and the edit that fixes it. */
interface Respelling extends Spelling {
  readonly path: Path;
  readonly written: string;
  readonly edit: TextEdit;
}

/** Every quantity of a document whose spelling can be fixed without any doubt about its value. */
export function* respellings({ kind, written, yaml }: ReadDocument): Generator<Respelling> {
  for (const { path, shape, value } of leavesOf('quantity', shapes[kind], written)) {
    if (typeof value !== 'string') continue;
    const spelling = canonicalSpelling(value, shape);
    if (spelling === null || spelling.canonical === value) continue;
    const edit = scalarEdit(yaml, path, spelling.canonical);
    if (edit !== null) yield { ...spelling, path, written: value, edit };
  }
}

/** Replaces a scalar and keeps its quotes; null where no scalar in one line's form stands. */
function scalarEdit(yaml: YamlDocument, path: Path, text: string): TextEdit | null {
  const node = placeAt(yaml, path)?.value;
  if (!isScalar(node) || !node.range) return null;
  const [start, end] = node.range;
  switch (node.type) {
    case Scalar.PLAIN:
      return { start, end, text: needsQuotes(text, isInFlow(yaml, path)) ? `'${text}'` : text };
    case Scalar.QUOTE_SINGLE:
      return { start, end, text: `'${text}'` };
    case Scalar.QUOTE_DOUBLE:
      return { start, end, text: `"${text}"` };
    default:
      return null;
  }
}

/** UCUM codes hold brackets and braces, which mean something else at the start of a value and inside of `{…}`. */
function needsQuotes(text: string, inFlow: boolean): boolean {
  return /^[[{%]/.test(text) || (inFlow && /[[\]{}]/.test(text));
}

function isInFlow(yaml: YamlDocument, path: Path): boolean {
  return path.some((_, length) => {
    const node = length === 0 ? yaml.tree.contents : placeAt(yaml, path.slice(0, length))?.value;
    return isCollection(node) && node.flow === true;
  });
}
