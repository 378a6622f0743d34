import { isObject, type Path } from '../shape.ts';
import type { TextEdit } from '../yaml/text-edit.ts';
import { placeAt } from '../yaml/yaml-document.ts';
import type { Mapping, Migration } from './migration.ts';
import { presentCode } from './renamed-rules.ts';

/** Rules were given plainer codes; what a profile acknowledges is named by them. */
export const codesOfRules: Migration = {
  number: '0002',
  title: 'rules under `acknowledged` have the codes of today',
  oldPlace: (_, before) => oldCodes(before)[0]?.path ?? null,
  edits: (document, text) =>
    oldCodes(mappingOf(document.value)).flatMap(({ path, old, now }): TextEdit[] => {
      const range = placeAt(document, path)?.value?.range;
      if (!range) return [];
      const [start, end] = range;
      return [{ start, end, text: text.slice(start, end).replace(old, now) }];
    }),
  meaning: (before) => {
    const { acknowledged } = before;
    return Array.isArray(acknowledged) ? { ...before, acknowledged: acknowledged.map(renamed) } : before;
  },
};

interface OldCode {
  readonly path: Path;
  readonly old: string;
  readonly now: string;
}

function oldCodes({ acknowledged }: Mapping): OldCode[] {
  if (!Array.isArray(acknowledged)) return [];
  return acknowledged.flatMap((entry: unknown, index) => {
    const old = isObject(entry) ? entry.rule : null;
    const now = typeof old === 'string' ? presentCode(old) : null;
    return typeof old === 'string' && now !== null
      ? [{ path: ['acknowledged', index, 'rule'], old, now }]
      : [];
  });
}

function renamed(entry: unknown): unknown {
  if (!isObject(entry) || typeof entry.rule !== 'string') return entry;
  return { ...entry, rule: presentCode(entry.rule) ?? entry.rule };
}

function mappingOf(value: unknown): Mapping {
  return isObject(value) ? value : {};
}
