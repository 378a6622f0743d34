import { replaceText } from '../../host/replace-text.ts';
import { type FixedProfile, fixProfile } from '../../registry/fix/fix-profile.ts';
import type { LoadedRegistry } from '../../registry/load-files.ts';
import { type Problem, type Result, success } from '../../result.ts';

/**
 * Fixes the style of the wanted profiles in their files, each replaced as a whole or not at all, and returns a line
 * for each. Files with errors of syntax are left alone. Error: a file that cannot be written.
 */
export async function fixFiles(
  { registry, findings }: LoadedRegistry,
  wantsFile: (file: string) => boolean,
  cwd: string,
): Promise<Result<readonly string[], Problem>> {
  const broken = new Set(findings.filter(({ rule }) => rule.startsWith('syntax/')).map(({ file }) => file));
  const lines: string[] = [];
  for (const document of registry.documents) {
    const { path } = document.source;
    if (!wantsFile(path) || broken.has(path)) continue;
    const fixed = fixProfile(document);
    if (fixed === null) continue;
    const written = await replaceText(path, fixed.text, cwd);
    if (!written.ok) return written;
    lines.push(`Fixed ${path}: ${editsText(fixed)}.`);
  }
  return success(lines);
}

function editsText({ respelled, reordered }: FixedProfile): string {
  const spellings = respelled === 0 ? [] : [respelled === 1 ? '1 spelling' : `${respelled} spellings`];
  return [...spellings, ...(reordered ? ['the order of its keys'] : [])].join(', ');
}
