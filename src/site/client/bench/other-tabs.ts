import type { Entry } from '../../bench/draft.ts';

/** What pages of one browser tell each other. */
type TabMessage =
  | { readonly tell: 'written'; readonly entries: readonly Entry[] }
  | { readonly tell: 'open' | 'too'; readonly draft: string };

/** The other pages on which drafts are typed. */
interface OtherTabs {
  /** Passes on what is on the disk. */
  readonly pass: (entries: readonly Entry[]) => void;
  /** Says that this page has a draft open, and asks who has too. */
  readonly open: (draft: string) => void;
}

/** Listens to other pages: to what they have written, and whether one of them has the draft open that is open here. */
export function startTabs(
  written: (entries: readonly Entry[]) => void,
  shared: (draft: string) => void,
): OtherTabs {
  const channel = new BroadcastChannel('meltbounds-bench');
  let here: string | null = null;
  const say = (message: TabMessage) => channel.postMessage(message);
  channel.addEventListener('message', ({ data }: MessageEvent<TabMessage>) => {
    if (data.tell === 'written') return written(data.entries);
    if (data.draft !== here) return;
    shared(data.draft);
    if (data.tell === 'open') say({ tell: 'too', draft: data.draft });
  });
  return {
    pass: (entries) => say({ tell: 'written', entries }),
    open: (draft) => {
      here = draft;
      say({ tell: 'open', draft });
    },
  };
}
