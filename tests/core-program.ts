import {
  checkRegistry,
  claimsDocument,
  deriveTables,
  formatDocument,
  formatMatchAsJson,
  formatTableAsCsv,
  formatTableAsHtml,
  formatTableAsJson,
  judgeClaims,
  loadFiles,
  matchRegistry,
  planNextPiece,
  planTrial,
  reduceTrial,
} from '../src/core.ts';

const trials = ['lantern-stagecraft-pla-230', 'lantern-sound'];
const pairing = { machine: 'brackwater/lantern', filament: 'ashgrove/stagecraft-pla', policy: 'workshop' };
const begun = {
  columns: {
    commandedFlow: [20, 36, 46, 56],
    feedLength: [1000, 1000, 1000, 1000],
    extrudedMass: [2.98, 2.98, 2.91, 2.5],
  },
  rows: [1, 2, 3, 4],
};
const today = '2026-12-31';

/** What a program makes of the demo registry with the core alone, as JSON: it runs here, and bundled in a browser. */
export function coreResults(texts: ReadonlyMap<string, string>): string {
  const loaded = loadFiles([{ folder: 'profiles', texts }]);
  const { registry } = loaded;
  const table = deriveTables(registry, pairing, { today });
  const claims = judgeClaims(registry, pairing.machine, { today });
  const matched = matchRegistry(registry, { filament: pairing.filament, today });
  return JSON.stringify({
    files: loaded.files,
    findings: checkRegistry(loaded, { today }),
    reductions: trials.map((id) => reduceTrial(registry, id)),
    table: table.ok
      ? [formatTableAsJson, formatTableAsCsv, formatTableAsHtml].map((format) => format(table.value))
      : table,
    matched: matched.ok ? formatMatchAsJson(matched.value) : matched,
    claims: claims.ok ? formatDocument(claimsDocument(claims.value), 'markdown') : claims,
    plan: planTrial(registry, { ...pairing, today }),
    next: planNextPiece(registry, { ...pairing, today }, { observations: begun }),
    unknown: deriveTables(registry, { ...pairing, machine: 'brackwater/lanter' }, { today }),
  });
}
