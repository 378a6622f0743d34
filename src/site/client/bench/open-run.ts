import type { BenchSetting } from '../../bench/bench-data.ts';
import type { Entry, EntryContent } from '../../bench/draft.ts';
import { sortedRows } from '../../bench/draft-sheet.ts';
import type { IntervalAdvice } from '../../bench/interval-advice.ts';
import type { JudgedDraft } from '../../bench/judge-draft.ts';
import type { NextStep } from '../../bench/plan-draft.ts';
import type { ReducedDraft, RowRemark } from '../../bench/reduce-draft.ts';
import { copiesMarkup, judgedMarkup } from './files-view.ts';
import type { Keeper, Kept } from './keeper.ts';
import { liveDraft, type Typist } from './live-draft.ts';
import {
  adviceMarkup,
  limitMarkup,
  measuredMarkup,
  otherResultsMarkup,
  plotMarkup,
  warningMarkup,
} from './result-views.ts';
import { rowsMarkup, shapeOfRows, updateRows } from './rows-form.ts';
import { type RunActions, startActions } from './run-actions.ts';
import { runMarkup } from './run-page.ts';
import type { BenchWorker } from './worker-calls.ts';

/** What a run needs of the page around it. */
interface RunPlace {
  readonly section: HTMLElement;
  readonly setting: BenchSetting;
  readonly keeper: Keeper;
  readonly worker: BenchWorker;
  readonly typist: Typist;
}

/** A run that is on the screen. */
export interface OpenRun {
  /** Takes what another page has typed. */
  readonly merge: (entries: readonly Entry[]) => void;
  /** Says that another page has it open too. */
  readonly shared: () => void;
  readonly kept: (kept: Kept) => void;
  readonly failed: (fault: string) => void;
}

/** Typing has paused after so many milliseconds. */
const pause = 60;

/** Shows a run, keeps what is typed, and has it reduced and judged. */
export function openRun(
  { section, setting, keeper, worker, typist }: RunPlace,
  first: readonly Entry[],
): OpenRun {
  const live = liveDraft(first, typist, keeper.keep);
  section.innerHTML = runMarkup(live.draft());
  section.hidden = false;
  const at = (id: string) => section.querySelector<HTMLElement>(`#${id}`);
  const rows = at('bench-rows');
  let shape = '';
  let reduced: ReducedDraft | null = null;
  let judged: JudgedDraft | null = null;
  let judgedAt = 0;
  let next: NextStep | null = null;
  let advice: IntervalAdvice | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const show = (id: string, markup: string) => {
    const place = at(id);
    // What is the same stays as it is, so that nobody hears it again or loses the place.
    if (place !== null && place.dataset.shown !== markup) {
      place.innerHTML = markup;
      place.dataset.shown = markup;
    }
  };
  const remarks = (): readonly RowRemark[] => [
    ...(reduced?.problems ?? []),
    ...(judged?.findings ?? []).filter(({ row }) => row !== null),
  ];
  const showRows = () => {
    if (rows === null) return;
    const draft = live.draft();
    const now = shapeOfRows(draft);
    if (now !== shape) {
      const focused = document.activeElement?.id ?? '';
      rows.innerHTML = rowsMarkup(draft);
      shape = now;
      if (focused.startsWith('cell-')) document.getElementById(focused)?.focus();
    }
    updateRows(rows, draft, remarks());
  };
  const showFacts = () => {
    const { fields } = live.draft();
    for (const input of section.querySelectorAll<HTMLInputElement>('input[data-field]')) {
      const value = fields.get(input.dataset.field ?? '') ?? '';
      if (input !== document.activeElement && input.value !== value) input.value = value;
    }
  };
  const showFiles = () => {
    show('bench-copies', copiesMarkup(live.draft(), live.entries()));
    const files = at('bench-files');
    if (files === null) return;
    // What is not judged yet must not be taken for what was typed last.
    files.inert = judgedAt !== live.draft().changed;
    if (judged !== null) show('bench-files', judgedMarkup(judged, live.draft(), setting.webEditor));
  };
  // A limit or an advice that is about to change is not read out.
  const showBusy = (isBusy: boolean, ...places: readonly string[]) => {
    for (const place of places) at(place)?.setAttribute('aria-busy', String(isBusy));
  };
  const refresh = () => {
    showRows();
    showFacts();
  };
  const reduce = async () => {
    const draft = live.draft();
    const answer = await worker.ask({ ask: 'reduce', draft });
    if (answer === null) return;
    reduced = answer;
    show('bench-limit', limitMarkup(answer));
    showBusy(draft.changed !== live.draft().changed, 'bench-limit');
    show('bench-others', otherResultsMarkup(answer));
    show('bench-plot', plotMarkup(answer, draft.fields.get('id') ?? 'trial'));
    show('bench-warnings', warningMarkup(answer));
    updateRows(section, live.draft(), remarks());
    void advise();
    void judge();
  };
  const advise = async () => {
    const draft = live.draft();
    const answer = await worker.ask({ ask: 'advise', draft });
    if (answer === null) return;
    ({ next, advice } = answer);
    show('bench-advice', adviceMarkup(next, advice, draft));
    showBusy(draft.changed !== live.draft().changed, 'bench-advice');
  };
  const judge = async () => {
    const draft = live.draft();
    const answer = await worker.ask({ ask: 'judge', draft });
    if (answer === null) return;
    judged = answer;
    judgedAt = draft.changed;
    updateRows(section, live.draft(), remarks());
    showFiles();
  };
  const changed = () => {
    showBusy(true, 'bench-limit', 'bench-advice');
    showRows();
    showFiles();
    clearTimeout(timer);
    timer = setTimeout(() => void reduce(), pause);
  };
  const type = (contents: readonly EntryContent[]) => {
    live.type(contents);
    changed();
  };
  const tell = (text: string) => {
    const told = at('bench-told');
    if (told !== null) told.textContent = text;
  };
  const actions: RunActions = {
    live,
    type,
    tell,
    undo: () => {
      if (!live.undo()) return tell('There is nothing to undo on this page.');
      tell('Undone.');
      changed();
      showFacts();
    },
    next: () => next,
    files: () => judged?.files ?? [],
    drop: async (bytes) => {
      const read = await worker.ask({ ask: 'sheet', draft: live.draft(), bytes });
      if (read === null) return;
      if (!read.ok) return tell(read.error.map(({ message, help }) => `${message}; ${help}.`).join(' '));
      const before = sortedRows(live.draft()).complete.length;
      type(read.value);
      const after = sortedRows(live.draft()).complete.length;
      tell(`The sheet stands here now, ${after} rows; ${before} were here before. Undo brings them back.`);
    },
  };
  startActions(section, actions);
  // What another page has typed meanwhile is kept out of a field that somebody is in.
  section.addEventListener('focusout', () => setTimeout(refresh));
  keepAwake();
  showRows();
  showFiles();
  void reduce();
  void worker.ask({ ask: 'known', asked: live.draft().head.asked }).then((known) => {
    if (known === null) return;
    show('bench-known > div', measuredMarkup(known.measured));
    show('bench-plan > div', known.plan ?? '');
  });
  section.querySelector<HTMLElement>('h2')?.focus();

  return {
    merge: (entries) => {
      const taken = live.merge(entries.filter(({ draft }) => draft === live.draft().id));
      if (taken.length === 0) return;
      changed();
      showFacts();
    },
    shared: () =>
      tell(
        'This run is open on another page of this browser too. What is typed on either stands on both; of two texts in one field the later counts.',
      ),
    kept: (kept) => {
      const place = at('bench-keeping');
      if (place !== null) place.textContent = keptText(kept);
    },
    failed: (fault) =>
      tell(
        `${/[.?!]$/.test(fault) ? fault : `The calculation has failed: ${fault}.`} The files below hold all that was typed.`,
      ),
  };
}

function keptText(kept: Kept): string {
  const offline = navigator.onLine ? '' : ' · offline';
  if (kept.state === 'saving') return `saving …${offline}`;
  if (kept.state === 'saved') {
    const time = new Date(kept.at).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
    return `saved on this device ${time}${offline}`;
  }
  return `Not saved on this device: ${kept.why}. The form goes on; save the draft under "Files" before you close the page.${offline}`;
}

/** Keeps the screen on while a run is open, where the browser can: hands are at the machine. */
function keepAwake(): void {
  const hold = () => {
    if (document.visibilityState !== 'visible') return;
    void navigator.wakeLock?.request('screen').catch(() => undefined);
  };
  // A lock ends when the page is hidden.
  document.addEventListener('visibilitychange', hold);
  hold();
}
