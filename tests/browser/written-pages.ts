import { mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runCommand } from '../run-command.ts';

/** A page that the program has written: its path in the folder of the tables, and its text. */
export interface WrittenPage {
  readonly path: string;
  readonly html: string;
}

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Every page that `tables --all` writes for the demo registry, under one policy or all of them. */
export async function demoPages(policy?: string): Promise<WrittenPage[]> {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'meltbounds-pages-')));
  try {
    const limited = policy === undefined ? [] : ['--policy', policy];
    const { status, err } = await runCommand(root, ['tables', '--all', '--out', folder, ...limited]);
    if (status !== 0) throw new Error(`tables --all ended with ${status}: ${err}`);
    return readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.html'))
      .sort()
      .map((path) => ({ path, html: readFileSync(join(folder, path), 'utf8') }));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
