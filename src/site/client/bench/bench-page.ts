import { benchScripts, commonPartPath, partPath } from '../../address.ts';
import type { BenchData } from '../../bench/bench-data.ts';
import { draftOf, type Entry, type RunAsked } from '../../bench/draft.ts';
import { readDraftFile } from '../../bench/draft-form.ts';
import type { RegistryPart } from '../../bench/registry-part.ts';
import { type Kept, startKeeper } from './keeper.ts';
import { showKept } from './kept-drafts.ts';
import { type OpenRun, openRun } from './open-run.ts';
import { startTabs } from './other-tabs.ts';
import { showStart } from './start-form.ts';
import { startWorker } from './worker-calls.ts';

declare global {
  var meltboundsBench: BenchData | undefined;
}

// The script of the bench page: begins runs, goes on with those that are kept, and keeps the page at hand without a network.
const data = globalThis.meltboundsBench;
const sections = ['bench-start', 'bench-kept', 'bench-run'].map((id) => document.getElementById(id));
const [start, kept, run] = sections;
if (data !== undefined && start && kept && run && isSecureContext && location.protocol !== 'file:') {
  document.getElementById('bench-needs')?.remove();
  startBench(data, { start, kept, run });
}

interface Sections {
  readonly start: HTMLElement;
  readonly kept: HTMLElement;
  readonly run: HTMLElement;
}

function startBench(known: BenchData, { start: begin, kept: others, run: place }: Sections): void {
  const typist = { by: crypto.randomUUID(), now };
  let open: OpenRun | null = null;
  let standing: Kept = { state: 'saved', at: now() };
  const tabs = startTabs(
    (entries) => open?.merge(entries),
    () => open?.shared(),
  );
  const keeper = startKeeper(
    now,
    (kept) => {
      standing = kept;
      open?.kept(kept);
    },
    (entries) => tabs.pass(entries),
  );
  const worker = startWorker(benchScripts.worker, (fault) => open?.failed(fault));

  const goOn = async (entries: readonly Entry[]): Promise<string | null> => {
    const draft = draftOf(entries);
    if (draft === null) return 'This is no draft of a trial.';
    keeper.hold(entries);
    const problem = await loadFor(draft.head.asked);
    open = openRun({ section: place, setting: known.setting, keeper, worker, typist }, entries);
    open.kept(standing);
    if (problem !== null) open.failed(problem);
    tabs.open(draft.id);
    begin.hidden = true;
    others.hidden = true;
    location.hash = draft.id;
    return null;
  };

  const loadFor = async ({ machine, filament }: RunAsked): Promise<string | null> => {
    const family = known.filaments.find(({ id }) => id === filament)?.family ?? null;
    const paths = [
      commonPartPath,
      ...(family === null ? [] : [partPath('polymer', family)]),
      partPath('machine', machine),
      partPath('filament', filament),
    ];
    const parts = await Promise.all(paths.map(loadPart));
    const loaded = parts.filter((part) => part !== null);
    worker.start({ parts: loaded, places: known.setting, today: today() });
    return loaded.length === parts.length
      ? null
      : 'What the registry says of this machine or this filament cannot be loaded. What is typed is kept; results come once the page has been open with a network.';
  };

  const beginRun = async (asked: RunAsked): Promise<string | null> => {
    const problem = await loadFor(asked);
    if (problem !== null) return problem;
    const planned = await worker.ask({ ask: 'plan', asked });
    if (planned === null) return null;
    if (!planned.ok) return `${planned.error.message}. ${planned.error.help}`;
    const id = crypto.randomUUID();
    const time = now();
    const entries = planned.value.entries.map(
      (content): Entry => ({ draft: id, time, by: typist.by, ...content }),
    );
    keeper.keep(entries);
    void navigator.storage?.persist?.();
    return goOn(entries);
  };

  showStart(begin, known, beginRun);
  void keeper.load().then(({ entries, unknown }) => {
    showKept(others, entries, unknown, {
      goOn,
      forget: keeper.forget,
      read: async (text) => {
        const read = readDraftFile(text);
        if (read === null) return 'This is no draft that this page has written.';
        keeper.keep(read);
        return goOn(read);
      },
    });
    const asked = entries.filter(({ draft }) => draft === location.hash.slice(1));
    if (asked.length > 0) void goOn(asked);
  });
  for (const change of ['online', 'offline']) addEventListener(change, () => open?.kept(standing));
  if ('serviceWorker' in navigator) void navigator.serviceWorker.register(benchScripts.offline);
}

async function loadPart(path: string): Promise<RegistryPart | null> {
  try {
    const answer = await fetch(path.split('/').map(encodeURIComponent).join('/'));
    return answer.ok ? await answer.json() : null;
  } catch {
    return null;
  }
}

/** Milliseconds since 1970. */
function now(): number {
  return Date.now();
}

/** The day where the bench stands. */
function today(): string {
  const day = new Date();
  const two = (number: number) => String(number).padStart(2, '0');
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}
