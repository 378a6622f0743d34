import { element, type Markup } from '../../text/html-element.ts';
import { rootPages } from '../address.ts';
import type { SiteFile } from '../site-file.ts';
import { benchScriptedPage } from '../site-page.ts';

/** The page for a tablet beside the machine; what it holds is made by its script. */
export function benchPage(): SiteFile {
  const answer =
    'Choose a run, set what each row says, type what you read. The limit grows as you type, by the same calculation as the program’s.';
  return benchScriptedPage(rootPages.bench, 'Bench', [
    element('header', {}, [element('h1', {}, ['Bench']), element('p', { class: 'answer' }, [answer])]),
    element('main', { id: 'bench' }, [
      element('p', { id: 'bench-needs' }, [
        'This page needs script, and an address that begins with https:// or is that of this machine, such as http://localhost: browsers run workers and keep what is typed for such pages only, and not for one that is opened as a file. All other pages of the catalogue can be read as files. Without this page: ',
        element('code', {}, ['meltbounds plan']),
        ' writes the same sheet, and ',
        element('code', {}, ['meltbounds reduce']),
        ' gives the same limit.',
      ]),
      ...['bench-start', 'bench-kept', 'bench-run'].map(hiddenSection),
    ]),
  ]);
}

function hiddenSection(id: string): Markup {
  return element('section', { id, hidden: true }, []);
}
