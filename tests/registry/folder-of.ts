import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Kind } from '../../src/registry/kind.ts';
import { temporaryFolder } from '../sample-registry.ts';
import { goodTexts } from './good-documents.ts';

/** Where the good documents belong in a registry. */
export const goodPaths: Readonly<Record<Kind, string>> = {
  machine: 'machines/brackwater/lantern.yaml',
  filament: 'filaments/ashgrove/stagecraft-pla.yaml',
  polymer: 'polymers/PLA.yaml',
  trial: 'trials/2026/lantern-pla-230.yaml',
  policy: 'policies/workshop.yaml',
  job: 'jobs/mask-rack.yaml',
  source: 'sources/lantern-sheet.yaml',
  addition: 'additions/stagecraft-pla-ours.yaml',
};

/** The good documents, each at its path. */
export const goodFiles: Readonly<Record<string, string>> = Object.fromEntries(
  (Object.keys(goodPaths) as Kind[]).map((kind) => [goodPaths[kind], goodTexts[kind]]),
);

/** A new folder with files in it, written in the order given; it goes when the test is over. */
export function folderOf(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = temporaryFolder();
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  return folder;
}
