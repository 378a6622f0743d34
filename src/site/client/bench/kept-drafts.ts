import { groupedBy } from '../../../registry/grouped-by.ts';
import { element, type Markup } from '../../../text/html-element.ts';
import { counted } from '../../../text/words.ts';
import { type Draft, draftOf, type Entry } from '../../bench/draft.ts';
import { formatDraftFile } from '../../bench/draft-form.ts';
import { sortedRows } from '../../bench/draft-sheet.ts';
import { fileLink } from './file-link.ts';

/** What can be done with drafts that are kept. */
interface KeptActions {
  readonly goOn: (entries: readonly Entry[]) => Promise<string | null>;
  readonly forget: (draft: string) => Promise<void>;
  /** Reads the file of a draft; says what is wrong with it, or nothing. */
  readonly read: (text: string) => Promise<string | null>;
}

/** The drafts on this device, the last one first, and a way in for one that comes as a file. */
export function showKept(
  section: HTMLElement,
  entries: readonly Entry[],
  unknown: number,
  { goOn, forget, read }: KeptActions,
): void {
  const groups = groupedBy(entries, ({ draft }) => draft);
  const drafts = [...groups.values()].flatMap((group) => draftOf(group) ?? []);
  drafts.sort((one, other) => other.changed - one.changed);
  const newer =
    unknown === 0
      ? []
      : [
          element('p', { class: 'warning' }, [
            `${counted(unknown, 'entry', 'entries')} of drafts were written by a newer version of this page, and are left as they are. Load the page again with a network to read them.`,
          ]),
        ];
  section.innerHTML = [
    element('h2', {}, ['On this device']),
    ...newer,
    drafts.length === 0
      ? element('p', {}, ['No run was begun here yet.'])
      : element(
          'ul',
          { class: 'kept' },
          drafts.map((draft) => draftMarkup(draft, groups.get(draft.id) ?? [])),
        ),
    element('p', { class: 'chosen' }, [
      element('label', { for: 'draft-file' }, ['A draft from a file: ']),
      element('input', { id: 'draft-file', type: 'file', accept: '.json,application/json' }),
    ]),
    element('p', { id: 'kept-problem', role: 'alert' }, []),
  ]
    .map(({ markup }) => markup)
    .join('\n');
  section.hidden = false;
  const tell = (problem: string | null) => {
    const told = section.querySelector('#kept-problem');
    if (told !== null) told.textContent = problem ?? '';
  };
  section.onclick = ({ target }) => {
    if (!(target instanceof HTMLButtonElement)) return;
    const { draft = '', act } = target.dataset;
    if (act === 'go-on') void goOn(groups.get(draft) ?? []).then(tell);
    if (act === 'forget') askToForget(target, () => forget(draft));
  };
  section.querySelector<HTMLInputElement>('#draft-file')?.addEventListener('change', ({ target }) => {
    const [file] = target instanceof HTMLInputElement ? (target.files ?? []) : [];
    void file?.text().then(read).then(tell);
  });
}

/** Deleting is the one thing that cannot be undone, so that it takes two touches. */
function askToForget(button: HTMLButtonElement, forget: () => Promise<void>): void {
  if (button.dataset.sure === undefined) {
    button.dataset.sure = 'asked';
    button.textContent = 'Really delete? Touch again';
    return;
  }
  void forget().then(() => button.closest('li')?.remove());
}

function draftMarkup(draft: Draft, entries: readonly Entry[]): Markup {
  const { complete } = sortedRows(draft);
  const when = new Date(draft.changed);
  const time = `${when.toLocaleDateString()} ${when.toLocaleTimeString()}`;
  return element('li', {}, [
    element('strong', {}, [draft.head.title]),
    ` ${counted(complete.length, 'reading')}, ${time} `,
    element('span', { class: 'chosen' }, [
      element('button', { type: 'button', 'data-act': 'go-on', 'data-draft': draft.id }, ['Go on']),
      fileLink('Draft (JSON)', `${draft.fields.get('id') ?? 'draft'}.json`, formatDraftFile(entries)),
      element('button', { type: 'button', 'data-act': 'forget', 'data-draft': draft.id }, ['Delete']),
    ]),
  ]);
}
