import type { Kind } from '../kind.ts';
import type { Path } from '../shape.ts';
import type { TextEdit } from '../yaml/text-edit.ts';
import type { YamlDocument } from '../yaml/yaml-document.ts';

/** A change of the format's shape, as what it does to the text of a profile. Numbers go up and are never used again. */
export interface Migration {
  /** Four digits, as in the name of its file. */
  readonly number: string;
  /** What is written differently, in one line. */
  readonly title: string;
  /** The kind of documents that it concerns, and the place by which the old shape is known. */
  readonly kind: Kind;
  readonly oldPlace: Path;
  /** The edits that give a document the new shape. */
  readonly edits: (document: YamlDocument, text: string) => readonly TextEdit[];
  /** What must be read afterwards, of what was read before. */
  readonly meaning: (before: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;
}
