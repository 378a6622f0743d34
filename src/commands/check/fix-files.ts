import { dirname, resolve } from 'node:path';
import { missingConditionEdits } from '../../evidence/missing-conditions.ts';
import { tidyFolders } from '../../host/writing/leftovers.ts';
import { type ReplaceProblem, replaceText } from '../../host/writing/replace-text.ts';
import { type FixedProfile, fixProfile } from '../../registry/fix/fix-profile.ts';
import type { LoadedRegistry } from '../../registry/load-files.ts';
import { type Result, success } from '../../result.ts';

/** How often files are read anew into which others write at the same time. */
const mostAttempts = 20;

interface Fixing {
  readonly wantsFile: (file: string) => boolean;
  readonly cwd: string;
  /** Takes a line for each file that is fixed. */
  readonly tell: (line: string) => void;
  /** Reads the registry again, after somebody else has changed a file. */
  readonly readAnew: () => LoadedRegistry;
}

/**
 * Fixes the style of the wanted profiles in their files and adds conditions that trials know, each replaced as a whole or not at all. Files with errors of
 * syntax are left alone. Problems: a file that cannot be written.
 */
export async function fixFiles(
  loaded: LoadedRegistry,
  fixing: Fixing,
): Promise<Result<null, ReplaceProblem>> {
  const paths = loaded.registry.documents.map(({ source }) => source.path).filter(fixing.wantsFile);
  tidyFolders(paths.map((path) => dirname(resolve(fixing.cwd, path))));
  let now = loaded;
  for (let attempt = 1; ; attempt++) {
    const fixed = await fixEach(now, fixing);
    if (fixed.ok || fixed.error.code !== 'changedMeanwhile' || attempt === mostAttempts) return fixed;
    now = fixing.readAnew();
  }
}

async function fixEach(
  { registry, findings }: LoadedRegistry,
  { wantsFile, cwd, tell }: Fixing,
): Promise<Result<null, ReplaceProblem>> {
  const broken = new Set(findings.filter(({ rule }) => rule.startsWith('syntax/')).map(({ file }) => file));
  const profiles = new Map(registry.profiles.map((profile) => [profile.source.path, profile]));
  for (const document of registry.documents) {
    const { path, text } = document.source;
    if (!wantsFile(path) || broken.has(path)) continue;
    const profile = profiles.get(path);
    const fixed = fixProfile(document, profile && missingConditionEdits(profile, registry));
    if (fixed === null) continue;
    const written = await replaceText(path, { before: text, after: fixed.text }, cwd);
    if (!written.ok) return written;
    tell(`Fixed ${path}: ${editsText(fixed)}.`);
  }
  return success(null);
}

function editsText({ respelled, added, reordered }: FixedProfile): string {
  const spellings = respelled === 0 ? [] : [respelled === 1 ? '1 spelling' : `${respelled} spellings`];
  const conditions = added === 0 ? [] : [`the conditions of ${added === 1 ? '1 limit' : `${added} limits`}`];
  return [...spellings, ...conditions, ...(reordered ? ['the order of its keys'] : [])].join(', ');
}
