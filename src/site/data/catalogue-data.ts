import { notesOf } from '../../knowledge/quirks.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import { rules } from '../../rules/engine/rules.ts';
import { wordsOf } from '../../text/words.ts';
import { profilePage, rulePage } from '../address.ts';
import type { Catalogue } from '../catalogue.ts';
import type { CataloguedPairing } from '../catalogued-pairing.ts';
import type { SearchEntry } from '../find/search.ts';

/** What the script of the first page and of the comparison knows of the registry. */
export interface CatalogueData {
  readonly pairings: readonly CataloguedPairing[];
  readonly entries: readonly SearchEntry[];
}

export function catalogueData({ registry, pairings }: Catalogue): CatalogueData {
  const ruleEntries = rules.map(({ code, statement }) => ({
    kind: 'rule',
    name: code,
    page: rulePage(code),
    words: statement,
  }));
  return { pairings, entries: [...registry.profiles.map(entryOf), ...ruleEntries] };
}

function entryOf(profile: AnyProfile): SearchEntry {
  const { kind, id, data } = profile;
  const keys = new Map<string, unknown>(Object.entries(data));
  const text = (key: string) => {
    const value = keys.get(key);
    return typeof value === 'string' ? value : '';
  };
  const quirks = notesOf(profile).map(({ what }) => what);
  return {
    kind: wordsOf(kind),
    name: text('name') || text('title') || id,
    page: profilePage(kind, id),
    words: [id, text('maker'), text('polymer'), text('designation'), text('method'), ...quirks].join(' '),
  };
}
