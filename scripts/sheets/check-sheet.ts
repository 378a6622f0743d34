import type { Finding } from '../../src/registry/finding.ts';
import { loadFiles } from '../../src/registry/load-files.ts';
import { checkRegistry } from '../../src/rules/engine/check-registry.ts';
import { otherPairing, sheetRegistry, trialPath } from './sheet-registry.ts';
import { type Sheet, trialText } from './sheet-text.ts';

const today = '2026-11-29';

/** Errors and warnings of the whole check about the trial that a sheet becomes; `others` are texts of further trials. */
export function findingsOf(sheet: Sheet, others: ReadonlyMap<string, string> = new Map()): Finding[] {
  const texts = new Map([...sheetRegistry, ...others, [trialPath, trialText(sheet)]]);
  const loaded = loadFiles([{ folder: '', texts }]);
  return checkRegistry(loaded, { today }).filter(
    ({ file, severity }) => file === trialPath && severity !== 'note',
  );
}

/** A trial of another pairing and an earlier day that has a sheet already, with the profiles that it names. */
export function copiedTrial(sheet: Sheet): ReadonlyMap<string, string> {
  const text = trialText(sheet)
    .replace('id: sheet', 'id: first')
    .replace("date: '2026-03-12'", "date: '2026-03-02'")
    .replace('machine: lantern-street/rig', 'machine: lantern-street/bench')
    .replace('filament: lantern-street/strand', 'filament: lantern-street/thread')
    .replace('batch: 26-0117', 'batch: 26-0098');
  return new Map([...otherPairing, ['trials/2026/first.yaml', text]]);
}
