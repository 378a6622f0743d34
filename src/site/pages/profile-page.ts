import { originBlocks, originOf } from '../../knowledge/origin.ts';
import { quirkSections } from '../../knowledge/quirk-words.ts';
import { notesOf } from '../../knowledge/quirks.ts';
import { additionsTo } from '../../registry/addition.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import { asWritten, type Registry } from '../../registry/registry.ts';
import { type Block, facts, list, paragraph, section } from '../../text/document.ts';
import { formatHtmlBlock } from '../../text/format-html.ts';
import { element, type Markup } from '../../text/html-element.ts';
import { link, styled } from '../../text/inline.ts';
import { jsonText } from '../../text/json-text.ts';
import { capitalised, wordsOf } from '../../text/words.ts';
import { documentInPrint } from '../../units/in-print.ts';
import { besidePage, profilePage, type WayTo, wayFrom } from '../address.ts';
import type { Catalogue } from '../catalogue.ts';
import type { SiteFile } from '../site-file.ts';
import { sitePage } from '../site-page.ts';
import { byLargestFlow, longPairingList, pairingTable } from './pairing-rows.ts';
import { plainFacts } from './plain-facts.ts';
import { profileLink, statementTable } from './statement-table.ts';

/** The page of a machine, a filament, a family, house rules, a job or an addition, and what its file says as JSON. */
export function* profileFiles(profile: AnyProfile, catalogue: Catalogue): Generator<SiteFile> {
  const path = profilePage(profile.kind, profile.id);
  const to = wayFrom(path);
  const title = nameOf(profile);
  const markup = (blocks: readonly Block[]) =>
    documentInPrint({ title: null, blocks }).blocks.map((block) => formatHtmlBlock(block, 2));
  const main = element('main', {}, [
    ...markup([...headBlocks(profile, catalogue.registry), ...fileBlocks(profile, path, to)]),
    ...pairingSections(profile, catalogue, to),
    ...markup(bodyBlocks(profile, catalogue.registry, to)),
  ]);
  yield sitePage(path, title, [element('header', {}, [element('h1', {}, [title])]), main]);
  yield { path: besidePage(path, '.json'), text: profileJson(profile) };
}

/** A profile as its file has it, with the digest of the file. */
export function profileJson({ kind, id, source, written }: AnyProfile): string {
  return jsonText({
    format: 'meltbounds-profile/1',
    kind,
    id,
    file: source.relativePath,
    digest: source.digest,
    profile: written,
  });
}

/** `Stagecraft PLA (filament)`. */
export function nameOf({ kind, id, data }: AnyProfile): string {
  const name = 'name' in data && typeof data.name === 'string' ? data.name : id;
  return `${name} (${wordsOf(kind)})`;
}

function headBlocks({ kind, id, data }: AnyProfile, registry: Registry): Block[] {
  const notice = 'notice' in data && typeof data.notice === 'string' ? [paragraph(data.notice)] : [];
  return [...originBlocks(originOf(registry, { profiles: [{ kind, id }] })), ...notice];
}

/** Where it comes from. */
export function fileBlocks({ id, source, data }: AnyProfile, path: string, to: WayTo): Block[] {
  const version =
    'version' in data && typeof data.version === 'string' ? [['version', data.version] as const] : [];
  return [
    facts(
      ['id', id],
      ...version,
      ['file', [styled('code', source.relativePath), ` (SHA-256 ${source.digest.slice(0, 12)}…)`]],
      ['data', [link('JSON', to(besidePage(path, '.json')))]],
    ),
  ];
}

function pairingSections({ kind, id }: AnyProfile, { pairings }: Catalogue, to: WayTo): Markup[] {
  if (kind !== 'machine' && kind !== 'filament' && kind !== 'policy' && kind !== 'polymer') return [];
  const own = pairings.filter((pairing) => pairing[kind] === id);
  return [...new Set(own.map(({ policy }) => policy))].map((policy) => {
    const listed = own.filter((pairing) => pairing.policy === policy);
    const caption = `Largest flow of each pairing by the house rules ${policy}`;
    // Each pairing stands on the pages of its machine and its filament.
    const isWhole = kind === 'machine' || kind === 'filament';
    return element('section', {}, [
      element('h2', {}, [`Pairings by the house rules ${policy}`]),
      ...(isWhole
        ? [pairingTable(byLargestFlow(listed), caption, to)]
        : longPairingList(listed, caption, to)),
    ]);
  });
}

function bodyBlocks(profile: AnyProfile, registry: Registry, to: WayTo): Block[] {
  const figures = statementTable(asWritten(registry, profile.kind, profile.id) ?? profile, registry, to);
  return [
    ...quirkSections(notesOf(profile)),
    ...(figures === null ? [] : [section('Figures', [figures])]),
    ...additionBlocks(profile, registry, to),
    ...trialBlocks(profile, registry, to),
    section('Facts', [facts(...plainFacts(profile, registry, to))]),
  ];
}

function additionBlocks({ kind, id }: AnyProfile, registry: Registry, to: WayTo): Block[] {
  const additions = kind === 'filament' ? additionsTo(id, registry.addition) : [];
  return additions.length === 0
    ? []
    : [
        section('Figures that others have added', [
          list(additions.map((each) => [profileLink(registry, 'addition', each.id, to)])),
        ]),
      ];
}

/** The trials that were run with it. */
function trialBlocks({ kind, id }: AnyProfile, registry: Registry, to: WayTo): Block[] {
  if (kind !== 'machine' && kind !== 'filament' && kind !== 'job') return [];
  const trials = [...registry.trial.values()].filter(({ data }) => data[kind] === id);
  if (trials.length === 0) return [];
  const items = trials.map(({ id: trial, data }) => [
    profileLink(registry, 'trial', trial, to),
    `: ${wordsOf(data.method)}, ${data.date}`,
  ]);
  return [section(capitalised('trials'), [list(items)])];
}
