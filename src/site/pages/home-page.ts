import { originBlocks, originOf } from '../../knowledge/origin.ts';
import { formatHtmlBlock } from '../../text/format-html.ts';
import { element } from '../../text/html-element.ts';
import { counted } from '../../text/words.ts';
import { rootPages, wayFrom } from '../address.ts';
import type { Catalogue } from '../catalogue.ts';
import type { SiteFile } from '../site-file.ts';
import { scriptedPage } from '../site-page.ts';
import { findForm } from './find-form.ts';
import { longPairingList } from './pairing-rows.ts';

const title = 'Limits of machines and filaments';

/** The first page: every pairing with a table, the largest flow first. */
export function homePage({ registry, pairings }: Pick<Catalogue, 'registry' | 'pairings'>): SiteFile {
  const path = rootPages.home;
  const to = wayFrom(path);
  const origin = originOf(registry, { profiles: registry.profiles, trials: registry.trial.keys() });
  const policies = [...new Set(pairings.map(({ policy }) => policy))];
  const sections = policies.map((policy) => {
    const listed = pairings.filter((pairing) => pairing.policy === policy);
    return element('section', {}, [
      element('h2', {}, [`${counted(listed.length, 'pairing')} by the house rules ${policy}`]),
      ...longPairingList(
        listed,
        `Largest flow of each pairing by the house rules ${policy}, the largest first`,
        to,
      ),
    ]);
  });
  const { machine, filament, trial } = registry;
  const answer = `${counted(machine.size, 'machine')}, ${counted(filament.size, 'filament')}, ${counted(trial.size, 'trial')}. What each pairing can do, how well that is known, and what it rests on.`;
  const none = element('p', {}, ['No pairing has a table yet: no melt flow limit is known.']);
  return scriptedPage(path, title, [
    element('header', {}, [element('h1', {}, [title]), element('p', { class: 'answer' }, [answer])]),
    element('main', {}, [
      ...originBlocks(origin).map((block) =>
        element('div', { class: 'unreal' }, [formatHtmlBlock(block, 2)]),
      ),
      ...(pairings.length === 0 ? [] : [findForm(pairings)]),
      element('div', { id: 'pairings' }, sections.length === 0 ? [none] : sections),
    ]),
  ]);
}
