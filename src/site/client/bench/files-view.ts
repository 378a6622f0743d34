import { element, type Markup } from '../../../text/html-element.ts';
import { counted } from '../../../text/words.ts';
import type { Draft, Entry } from '../../bench/draft.ts';
import { formatDraftFile } from '../../bench/draft-form.ts';
import { formatSheet, sortedRows } from '../../bench/draft-sheet.ts';
import type { DraftFile, JudgedDraft } from '../../bench/judge-draft.ts';
import { editorAddress, type WebEditor } from '../../bench/web-editor.ts';
import { fileLink } from './file-link.ts';
import { joined } from './result-views.ts';
import { settingText } from './rows-form.ts';

/** What was typed so far as files, whatever becomes of the store or the worker. */
export function copiesMarkup(draft: Draft, entries: readonly Entry[]): string {
  const id = draft.fields.get('id') ?? 'trial';
  const sorted = sortedRows(draft);
  return joined([
    fileLink('Everything typed (draft)', `${id}.json`, formatDraftFile(entries)),
    ...(sorted.complete.length === 0
      ? []
      : [fileLink('Sheet (CSV)', `${id}.csv`, formatSheet(draft, sorted))]),
  ]);
}

/** The files for the registry, and what `check` would say of them. */
export function judgedMarkup(
  { files, findings, unstated }: JudgedDraft,
  draft: Draft,
  webEditor: WebEditor | null,
): string {
  const errors = findings.filter(({ severity }) => severity === 'error').length;
  const verdict =
    findings.length === 0
      ? 'No problems found.'
      : `${counted(findings.length, 'finding')}, ${counted(errors, 'error')}.`;
  return joined([
    element('h3', {}, ['For the registry']),
    element(
      'ul',
      { class: 'files' },
      files.map((file) => fileMarkup(file, webEditor)),
    ),
    ...(unstated === null ? [] : [element('p', {}, [unstated])]),
    element('h3', {}, ['What ', element('code', {}, ['check']), ' would say']),
    element('p', { id: 'bench-verdict', role: 'status' }, [verdict]),
    ...(findings.length === 0
      ? []
      : [
          element(
            'ul',
            { class: 'findings' },
            findings.map((finding) => findingMarkup(finding, draft)),
          ),
        ]),
    element('p', { class: 'note' }, [
      'Judged here, by the rules of the program: form, units, evidence, and what is plausible for this machine and this filament. Judged in the registry alone: whether the id, the batch or the readings stand in a trial of another pairing, and the form of profiles that were there before.',
    ]),
  ]);
}

function findingMarkup(
  { severity, text, rule, path, row }: JudgedDraft['findings'][number],
  draft: Draft,
): Markup {
  const place = row === null ? '' : `, ${settingText(draft, row)}`;
  return element('li', { class: severity }, [
    element('strong', {}, [`${severity}: `]),
    text,
    element('small', {}, [` ${rule}, ${path}${place}`]),
  ]);
}

const words = {
  trial: 'Trial',
  sheet: 'Sheet',
  statement: 'Profile with the limit',
  addition: 'Addition with the limit',
} as const;

function fileMarkup(file: DraftFile, webEditor: WebEditor | null): Markup {
  const { what, path, text, isNew } = file;
  const editor = webEditor === null ? null : editorAddress(webEditor, file);
  return element('li', {}, [
    `${words[what]} `,
    element('code', {}, [path]),
    isNew ? '' : ' (changed)',
    element('span', { class: 'chosen' }, [
      fileLink('Download', path, text),
      element('button', { type: 'button', 'data-act': 'copy', 'data-path': path }, ['Copy']),
      ...(editor === null
        ? []
        : [
            element(
              'a',
              {
                ...{ href: editor.address, target: '_blank', rel: 'noopener noreferrer' },
                ...(editor.holdsText ? {} : { 'data-act': 'copy-and-open', 'data-path': path }),
              },
              [editor.holdsText ? 'Open in the web editor' : 'Copy, and open the web editor to paste it'],
            ),
          ]),
    ]),
  ]);
}
