import type {
  Addition,
  Filament,
  Job,
  Machine,
  Policy,
  Polymer,
  Source,
  Trial,
} from './generated/documents.ts';
import type { Kind } from './kind.ts';
import type { ReadFile } from './registry-file.ts';
import type { Path } from './shape.ts';
import type { SourceText } from './source-text.ts';
import type { YamlDocument } from './yaml/yaml-document.ts';

/** Type of the normalised document of each kind. */
interface DocumentOfKind {
  readonly machine: Machine;
  readonly filament: Filament;
  readonly polymer: Polymer;
  readonly trial: Trial;
  readonly policy: Policy;
  readonly job: Job;
  readonly source: Source;
  readonly addition: Addition;
}

/** A file whose YAML could be read and whose kind is known, whether or not its content fits the schema. */
export interface ReadDocument {
  readonly kind: Kind;
  readonly id: string;
  /** The plain value as written: nothing about it is certain. */
  readonly written: unknown;
  readonly source: SourceText;
  readonly yaml: YamlDocument;
}

/** A document of a registry: its data in canonical units, and the text that it was read from. */
export interface Profile<OfKind extends Kind> extends ReadDocument {
  readonly kind: OfKind;
  readonly data: DocumentOfKind[OfKind];
  /** Where a path of the data stands in the text: list items that cannot be read are not in the data. */
  readonly originalPath: (path: Path) => Path;
  /** For a trial whose readings stand in a CSV file: that file. */
  readonly attachment: ReadFile | null;
}

/** A profile of whatever kind, told apart by `kind`. */
export type AnyProfile = { readonly [OfKind in Kind]: Profile<OfKind> }[Kind];
