import { element } from '../../text/html-element.ts';
import { rootPages, wayFrom } from '../address.ts';
import type { SiteFile } from '../site-file.ts';
import { compareScriptedPage } from '../site-page.ts';

/** The page on which pairings stand beside each other; which ones its address says. */
export function comparePage(): SiteFile {
  const to = wayFrom(rootPages.compare);
  return compareScriptedPage(rootPages.compare, 'Compare', [
    element('header', {}, [element('h1', {}, ['Compare'])]),
    element('section', { id: 'choose', class: 'find', 'aria-label': 'Choose pairings', hidden: true }, []),
    element('main', { id: 'compare' }, [
      element('p', {}, [
        'Up to four pairings beside each other, with their ladders overlaid, and the time of a job on each. Choose them in the list of ',
        element('a', { href: to(rootPages.home) }, ['pairings']),
        '. This page needs script; the page of each pairing does not.',
      ]),
    ]),
  ]);
}
