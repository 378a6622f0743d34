import { trialResults } from '../../src/bench/reduce-trial.ts';
import type { Finding } from '../../src/registry/finding.ts';
import { fixProfile } from '../../src/registry/fix/fix-profile.ts';
import { identityOfPath } from '../../src/registry/kind.ts';
import { linkFiles, parsingChanges } from '../../src/registry/load-files.ts';
import { migrateText } from '../../src/registry/migrations/migrate-text.ts';
import { readProfile } from '../../src/registry/read-profile.ts';
import { fileOfText, isProfilePath, type ReadFile, refused } from '../../src/registry/registry-file.ts';
import { formatReport } from '../../src/report/findings/findings-formats.ts';
import { summarise } from '../../src/report/findings/summary.ts';
import { judgeRegistry } from '../../src/rules/engine/check-registry.ts';
import { sampleTexts } from '../../tests/sample-texts.ts';
import { type FuzzArea, must, mustBeSafe } from './fuzz-area.ts';

const root = { shown: 'profiles' };
const texts = sampleTexts();
const paths = [...texts.keys()].filter(isProfilePath);
const seeds = paths.map((path) => texts.get(path) ?? '');
const bySeed = new Map(paths.map((path) => [/^id: .*$/m.exec(texts.get(path) ?? '')?.[0], path]));

/** Where a mutant belongs: where the profile with its id stands, if it has one still. */
function pathFor(text: string): string {
  return bySeed.get(/^id: .*$/m.exec(text)?.[0]) ?? 'machines/plumstead/wren.yaml';
}

function fileAt(path: string, text: string | undefined): ReadFile {
  return text === undefined ? refused(root, path, 'missing') : fileOfText(root, path, text);
}

/** One file by itself: read, judged by its schema, fixed and migrated. */
export const profileArea: FuzzArea = {
  name: 'profiles',
  share: 0.08,
  seeds,
  take: (text) => {
    const path = pathFor(text);
    const read = readProfile(fileAt(path, text), (name) => refused(root, name, 'missing'));
    for (const finding of read.findings) mustPointInto(finding, text);
    must(read.profile !== null || read.findings.length > 0, 'refused without a finding');
    // Migrating reads a text as often as there are migrations, so only some are.
    if (text.length % 4 === 0) migrateText(text);
    if (read.document === null || read.findings.length > 0) return false;
    const fixed = fixProfile(read.document);
    if (fixed !== null) {
      const again = readProfile(fileAt(path, fixed.text), (name) => refused(root, name, 'missing'));
      must(again.findings.length === 0, `fixing has broken it: ${again.findings[0]?.message}`);
      must(again.document === null || fixProfile(again.document) === null, 'fixing twice is not fixing once');
    }
    return true;
  },
};

function mustPointInto({ line, column, endLine, endColumn, message, help }: Finding, text: string): void {
  const lines = text.split('\n').length;
  must(line >= 1 && column >= 1 && line <= lines, `place ${line}:${column} lies outside of ${lines} lines`);
  must(endLine > line || endColumn >= column, 'ends before it begins');
  must(message.length < 2000 && (help ?? '').length < 2000, 'a message without an end');
}

const parse = parsingChanges();
const remembered = new Map<string, ReturnType<typeof trialResults>>();

/** A registry with one mutant in it: linked, judged by every rule, and reported in every form. */
export const judgingArea: FuzzArea = {
  name: 'judgements',
  share: 0.005,
  seeds,
  take: (text) => {
    const changed = pathFor(text);
    const textAt = (path: string) => (path === changed ? text : texts.get(path));
    const readSibling = (path: string) => fileAt(path, textAt(path));
    const loaded = linkFiles(
      paths.map((path) => ({ file: readSibling(path), readSibling })),
      parse,
    );
    const { findings, acknowledged } = judgeRegistry(loaded, {
      today: '2026-12-31',
      reduce: (registry, id) => {
        const key = JSON.stringify([
          id,
          registry.trial.get(id)?.data,
          registry.filament.get(`${registry.trial.get(id)?.data.filament}`)?.data,
        ]);
        const known = remembered.get(key) ?? trialResults(registry, id);
        if (remembered.size < 5000) remembered.set(key, known);
        return known;
      },
    });
    const report = {
      findings,
      acknowledged,
      summary: summarise(findings, paths.length, acknowledged.length),
      files: paths,
      failOn: 'error',
      version: '1.0.0',
      today: '2026-12-31',
      colour: false,
      textOf: (file: string) => loaded.texts.get(file),
    } as const;
    mustBeSafe(`${formatReport.text(report)}`);
    mustBeSafe(`${formatReport.annotations(report)}`);
    JSON.parse(`${formatReport.json(report)}`);
    formatReport.junit(report);
    JSON.parse(`${formatReport.codeQuality(report)}`);
    mustBeSafe(`${formatReport.markdown(report)}`);
    return findings.length === 0 && identityOfPath(changed) !== null;
  },
};
