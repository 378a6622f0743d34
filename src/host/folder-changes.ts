import { type FSWatcher, watch } from 'node:fs';

/** An editor saves in several steps, in ms: what comes within this time is one change. */
const onePause = 30;

/**
 * Watches some folders from now on, and tells once of the changes below them that come together, and again of the next
 * ones, without end. Throws what the system says where it cannot watch any longer.
 */
export function folderChanges(folders: readonly string[]): AsyncIterable<void> {
  let wake = () => {};
  let hasChanged = false;
  let failure: unknown = null;
  const tell = () => {
    hasChanged = true;
    wake();
  };
  const watchers: FSWatcher[] = folders.map((folder) =>
    watch(folder, { recursive: true }, tell).on('error', (error) => {
      failure = error;
      tell();
    }),
  );
  async function* changes(): AsyncGenerator<void> {
    try {
      for (;;) {
        if (!hasChanged)
          await new Promise<void>((resolve) => {
            wake = resolve;
          });
        await new Promise((resolve) => setTimeout(resolve, onePause));
        if (failure !== null) throw failure;
        hasChanged = false;
        yield;
      }
    } finally {
      for (const watcher of watchers) watcher.close();
    }
  }
  return changes();
}
