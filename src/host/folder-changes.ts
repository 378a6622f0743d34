import { type FSWatcher, watch } from 'node:fs';

/** An editor saves in several steps, in ms: what comes within this time is one change. */
const onePause = 30;

/** Tells once of the changes below some folders that come together, and again of the next ones, without end. */
export async function* folderChanges(folders: readonly string[]): AsyncGenerator<void> {
  let wake = () => {};
  let hasChanged = false;
  const watchers: FSWatcher[] = folders.map((folder) =>
    watch(folder, { recursive: true }, () => {
      hasChanged = true;
      wake();
    }),
  );
  try {
    for (;;) {
      if (!hasChanged)
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
      await new Promise((resolve) => setTimeout(resolve, onePause));
      hasChanged = false;
      yield;
    }
  } finally {
    for (const watcher of watchers) watcher.close();
  }
}
