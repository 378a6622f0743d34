import { notesOf } from '../../knowledge/quirks.ts';
import { type Kind, kinds } from '../../registry/kind.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { rules } from '../../rules/engine/rules.ts';

/** What can be found by its words, one row each: `rule` or a kind of profile by its place in `kinds`, id, name, words. */
export interface SearchData {
  readonly kinds: readonly (Kind | 'rule')[];
  readonly rows: readonly SearchRow[];
}

/** A name that is the id is empty. */
type SearchRow = readonly [kind: number, id: string, name: string, words: string];

export function searchData(registry: Registry): SearchData {
  const searched = [...kinds, 'rule'] as const;
  const rows = [
    ...registry.profiles.map((profile) => rowOf(profile, searched.indexOf(profile.kind))),
    ...rules.map(({ code, statement }): SearchRow => [searched.indexOf('rule'), code, '', statement]),
  ];
  return { kinds: searched, rows };
}

function rowOf(profile: AnyProfile, kind: number): SearchRow {
  const { id, data } = profile;
  const keys = new Map<string, unknown>(Object.entries(data));
  const text = (key: string) => {
    const value = keys.get(key);
    return typeof value === 'string' ? value : '';
  };
  const quirks = notesOf(profile).map(({ what }) => what);
  const words = [text('maker'), text('polymer'), text('designation'), text('method'), ...quirks];
  return [kind, id, text('name') || text('title'), words.filter((word) => word !== '').join(' ')];
}
