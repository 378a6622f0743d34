import { bareDates } from '../fix/quote-dates.ts';
import { isKind } from '../kind.ts';
import type { YamlDocument } from '../yaml/yaml-document.ts';
import type { Mapping, Migration } from './migration.ts';

/** Dates stood bare, which readers of YAML 1.1 take for points in time. */
export const datesAsText: Migration = {
  number: '0003',
  title: 'dates stand in quotation marks',
  oldPlace: (document, before, text) => found(document, before, text)[0]?.path ?? null,
  edits: (document, text, before) => found(document, before, text).map(({ edit }) => edit),
  meaning: (before) => before,
};

function found(document: YamlDocument, { kind }: Mapping, text: string) {
  return isKind(kind) ? [...bareDates(kind, text, document)] : [];
}
