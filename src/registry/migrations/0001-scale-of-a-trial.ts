import { placeAt } from '../yaml/yaml-document.ts';
import type { Migration } from './migration.ts';

const oldKey = 'scaleResolution';

/**
 * Drafts before the first release gave the smallest step of the scale alone; what else is known of the scale had no
 * place. The value and its comments stay as they are: only the key becomes two.
 */
export const scaleOfATrial: Migration = {
  number: '0001',
  title: '`scaleResolution` of a trial is now `resolution` under `scale`',
  oldKey: { kind: 'trial', place: [oldKey] },
  oldPlace: (document, { kind }) =>
    kind === 'trial' && placeAt(document, [oldKey]) !== null ? [oldKey] : null,
  edits: (document, text) => {
    const range = placeAt(document, [oldKey])?.key?.range;
    if (!range) return [];
    const newline = text.includes('\r\n') ? '\r\n' : '\n';
    return [{ start: range[0], end: range[1], text: `scale:${newline}  resolution` }];
  },
  meaning: (before) =>
    Object.fromEntries(
      Object.entries(before).map(([key, value]) =>
        key === oldKey ? ['scale', { resolution: value }] : [key, value],
      ),
    ),
};
