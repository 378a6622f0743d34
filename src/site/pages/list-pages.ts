import { formatQuirk, quirkFacts } from '../../knowledge/quirk-words.ts';
import { newestFirst, notesOf } from '../../knowledge/quirks.ts';
import { compareText } from '../../registry/finding.ts';
import type { Kind } from '../../registry/kind.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import {
  type Cell,
  type Column,
  leftColumns,
  list,
  paragraph,
  rowNames,
  type Table,
  table,
} from '../../text/document.ts';
import { link } from '../../text/inline.ts';
import { jsonText } from '../../text/json-text.ts';
import { capitalised, counted, wordsOf } from '../../text/words.ts';
import { besidePage, profilePage, rootPages, type WayTo, wayFrom } from '../address.ts';
import type { Catalogue } from '../catalogue.ts';
import type { SiteFile } from '../site-file.ts';
import { documentPage } from '../site-page.ts';
import { citationText } from './source-page.ts';

/** The lists of profiles of each kind, and of all quirks. */
export function* listFiles({ registry }: Catalogue): Generator<SiteFile> {
  for (const { kind, page, title, columns } of kindLists) {
    const profiles = [...registry[kind].values()].toSorted((one, other) => compareText(one.id, other.id));
    const to = wayFrom(page);
    const blocks =
      profiles.length === 0
        ? [paragraph('The registry holds none.')]
        : [profileTable(profiles, title, columns, to)];
    yield documentPage(page, title, {
      title,
      answer: counted(profiles.length, wordsOf(kind), pluralOf(kind)),
      blocks,
    });
    yield { path: besidePage(page, '.json'), text: formatList(profiles, kind) };
  }
  yield* quirkFiles(registry);
}

interface KindList {
  readonly kind: Kind;
  readonly page: string;
  readonly title: string;
  /** Keys that stand beside the name. */
  readonly columns: readonly string[];
}

const kindLists: readonly KindList[] = [
  { kind: 'machine', page: rootPages.machines, title: 'Machines', columns: ['maker', 'layout'] },
  { kind: 'filament', page: rootPages.filaments, title: 'Filaments', columns: ['maker', 'designation'] },
  {
    kind: 'trial',
    page: rootPages.trials,
    title: 'Trials',
    columns: ['date', 'method', 'origin', 'machine', 'filament'],
  },
  { kind: 'source', page: rootPages.sources, title: 'Sources', columns: ['title', 'type', 'standing'] },
  { kind: 'polymer', page: rootPages.polymers, title: 'Polymers', columns: [] },
  { kind: 'policy', page: rootPages.policies, title: 'House rules', columns: [] },
  { kind: 'job', page: rootPages.jobs, title: 'Jobs', columns: [] },
  { kind: 'addition', page: rootPages.additions, title: 'Additions', columns: ['filament'] },
];

function pluralOf(kind: Kind): string {
  return kind === 'policy' ? 'policies' : `${wordsOf(kind)}s`;
}

function profileTable(
  profiles: readonly AnyProfile[],
  title: string,
  keys: readonly string[],
  to: WayTo,
): Table {
  const columns: Column[] = [
    ...rowNames('Name'),
    ...leftColumns(...keys.map((key) => capitalised(wordsOf(key)))),
  ];
  const rows = profiles.map((profile): Cell[] => [
    [link(listedName(profile), to(profilePage(profile.kind, profile.id)))],
    ...keys.map((key) => keyText(profile, key)),
  ]);
  return table(columns, rows, { caption: title, name: 'listing' });
}

function listedName({ id, data }: AnyProfile): string {
  return 'name' in data && typeof data.name === 'string' ? data.name : id;
}

function keyText({ data }: AnyProfile, key: string): string {
  const value = Object.hasOwn(data, key)
    ? new Map<string, unknown>(Object.entries(data)).get(key)
    : undefined;
  return typeof value === 'string' ? (key === 'method' || key === 'layout' ? wordsOf(value) : value) : '';
}

function formatList(profiles: readonly AnyProfile[], kind: Kind): string {
  const entries = profiles.map((profile) => ({
    id: profile.id,
    name:
      profile.kind === 'source'
        ? `${profile.data.title}: ${citationText(profile.data)}`
        : listedName(profile),
    page: profilePage(kind, profile.id),
    digest: profile.source.digest,
  }));
  return jsonText({ format: 'meltbounds-list/1', kind, profiles: entries });
}

function* quirkFiles(registry: Registry): Generator<SiteFile> {
  const quirks = registry.profiles.flatMap(notesOf).toSorted(newestFirst);
  const to = wayFrom(rootPages.quirks);
  yield documentPage(rootPages.quirks, 'Quirks', {
    title: 'Quirks',
    answer: `${counted(quirks.length, 'note')} from the bench and the workshop, the newest first.`,
    blocks: [
      list(
        quirks.map((quirk) => [
          formatQuirk(quirk),
          ' ',
          link('where it stands', to(profilePage(quirk.of.kind, quirk.of.id))),
        ]),
      ),
    ],
  });
  yield {
    path: besidePage(rootPages.quirks, '.json'),
    text: jsonText({ format: 'meltbounds-quirks/1', quirks: quirks.map(quirkFacts) }),
  };
}
