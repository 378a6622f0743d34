import { isScalar, Scalar } from 'yaml';
import { shapes } from '../generated/shapes.ts';
import type { Kind } from '../kind.ts';
import { leavesOf, type Path } from '../shape.ts';
import type { TextEdit } from '../yaml/text-edit.ts';
import { placeAt, type YamlDocument } from '../yaml/yaml-document.ts';

/** A date without quotation marks, which readers of YAML 1.1 take for a point in time, and the edit that quotes it. */
interface BareDate {
  readonly path: Path;
  readonly written: string;
  readonly edit: TextEdit;
}

/** What a bare date looks like in a text; where nothing does, no syntax tree need be made. */
const looksBare = /(?:^|[\s,:[{])\d{4}-\d{2}-\d{2}(?=[\s,\]}]|$)/;

/** Every date of a document that stands without quotation marks. */
export function* bareDates(kind: Kind, text: string, yaml: YamlDocument): Generator<BareDate> {
  if (!looksBare.test(text)) return;
  for (const { path, value } of leavesOf('date', shapes[kind], yaml.value)) {
    if (typeof value !== 'string' || !/^[\d-]+$/.test(value)) continue;
    const node = placeAt(yaml, path)?.value;
    if (!isScalar(node) || node.type !== Scalar.PLAIN || !node.range) continue;
    const [start, end] = node.range;
    yield { path, written: value, edit: { start, end, text: `'${value}'` } };
  }
}
