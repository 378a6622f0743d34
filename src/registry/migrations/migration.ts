import type { Kind } from '../kind.ts';
import type { Path } from '../shape.ts';
import type { TextEdit } from '../yaml/text-edit.ts';
import type { YamlDocument } from '../yaml/yaml-document.ts';

/** The keys and values at the root of a document. */
export type Mapping = Readonly<Record<string, unknown>>;

/** A change of the format, as what it does to the text of a profile. Numbers go up and are never used again. */
export interface Migration {
  /** Four digits, as in the name of its file. */
  readonly number: string;
  /** What is written differently, in one line. */
  readonly title: string;
  /** A key that the format no longer knows; `check` leads from it to `migrate`. */
  readonly oldKey?: { readonly kind: Kind; readonly place: Path };
  /** The first place of a document that is written as before; null where nothing is. */
  readonly oldPlace: (document: YamlDocument, before: Mapping, text: string) => Path | null;
  /** The edits that bring a document into the present form. */
  readonly edits: (document: YamlDocument, text: string, before: Mapping) => readonly TextEdit[];
  /** What must be read afterwards, of what was read before. */
  readonly meaning: (before: Mapping) => Mapping;
}
