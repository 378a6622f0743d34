import { labelIn } from '../../registry/facts-of-key.ts';
import type { Source } from '../../registry/generated/documents.ts';
import type { AnyProfile, Profile } from '../../registry/profile.ts';
import { oncePerRegistry, type Registry } from '../../registry/registry.ts';
import { statementsOf } from '../../registry/statement.ts';
import { type Block, facts, list, paragraph, section } from '../../text/document.ts';
import { link, type Text } from '../../text/inline.ts';
import { wordsOf } from '../../text/words.ts';
import { besidePage, profilePage, type WayTo, wayFrom } from '../address.ts';
import type { SiteFile } from '../site-file.ts';
import { documentPage } from '../site-page.ts';
import { plainFacts } from './plain-facts.ts';
import { fileBlocks, nameOf, profileJson } from './profile-page.ts';

/** The page of a source with everything that cites it. */
export function* sourceFiles(source: Profile<'source'>, registry: Registry): Generator<SiteFile> {
  const path = profilePage('source', source.id);
  const to = wayFrom(path);
  const { title, note } = source.data;
  const blocks: Block[] = [
    ...(note === undefined ? [] : [paragraph(note)]),
    facts(...plainFacts(source, registry, to)),
    section('Cited by', [citations(source.id, registry, to)]),
    section('File', fileBlocks(source, path, to)),
  ];
  yield documentPage(path, title, { title, answer: citationText(source.data), blocks });
  yield { path: besidePage(path, '.json'), text: profileJson(source) };
}

/** `Crawford, R. J. (1998), Butterworth-Heinemann.` */
export function citationText({ author, editor, issued, publisher, type }: Source): string {
  const people = (author ?? editor ?? []).map(
    ({ family, given, literal }) => literal ?? [family, given].filter(Boolean).join(', '),
  );
  const year = issued?.['date-parts'][0]?.[0];
  const parts = [people.join('; '), year === undefined ? '' : `(${year})`, publisher ?? ''].filter(
    (part) => part !== '',
  );
  return parts.length === 0 ? `${wordsOf(type)}.` : `${parts.join(' ')}.`;
}

interface Citation {
  readonly profile: AnyProfile;
  readonly what: string;
}

const citationIndex = oncePerRegistry((registry) => {
  const cited = new Map<string, Citation[]>();
  for (const profile of registry.profiles) {
    for (const { path, statement } of statementsOf(profile)) {
      if (statement.source === undefined) continue;
      const known = cited.get(statement.source) ?? [];
      cited.set(statement.source, known);
      known.push({ profile, what: labelIn(profile, path) });
    }
  }
  return cited;
});

/** A profile stands once, with all that it takes from the source. */
function citations(id: string, registry: Registry, to: WayTo): Block {
  const byProfile = new Map<AnyProfile, Set<string>>();
  for (const { profile, what } of citationIndex(registry).get(id) ?? []) {
    byProfile.set(profile, (byProfile.get(profile) ?? new Set()).add(what));
  }
  if (byProfile.size === 0) return paragraph('No figure of the registry names it.');
  return list(
    [...byProfile].map(
      ([profile, what]): Text => [
        link(nameOf(profile), to(profilePage(profile.kind, profile.id))),
        `: ${[...what].join(', ')}`,
      ],
    ),
  );
}
