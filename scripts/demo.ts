import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { syncFolder } from '../src/host/writing/sync-folder.ts';
import { writeFiles } from '../src/host/writing/write-files.ts';
import { checkRegistry, deriveTables, loadRegistry, reduceTrial, type SpeedRow } from '../src/index.ts';
import { formatSite } from '../src/site/format-site.ts';
import { tableFiles } from '../src/tables/write/table-files.ts';
import { alignedCells } from '../src/text/text-grid.ts';

const trial = 'lantern-stagecraft-pla-230-fine';
const pairing = { machine: 'brackwater/lantern', filament: 'ashgrove/stagecraft-pla', policy: 'workshop' };

// `npm run demo | head` closes the pipe before the end: no error.
process.stdout.on('error', () => process.exit());

const root = fileURLToPath(new URL('..', import.meta.url));
const read = loadRegistry(['profiles'], root);
if (!read.ok) throw new Error(read.error.message);
const loaded = read.value;
const today = new Date().toISOString().slice(0, 10);
const findings = checkRegistry(loaded, { today });
const errors = findings.filter(({ severity }) => severity === 'error');
console.log(
  `Demo registry (invented; its polymers and sources are real): ${loaded.files.length} profiles, ${errors.length} errors.`,
);
if (errors.length > 0) throw new Error(`${errors[0]?.file}:${errors[0]?.line}: ${errors[0]?.message}`);

const reduction = reduceTrial(loaded.registry, trial);
if (!reduction.ok) throw new Error(reduction.error[0]?.message);
const { nozzle, conditions } = loaded.registry.trial.get(trial)?.data ?? {};
const [limit] = reduction.value.results;
if (limit === undefined || nozzle === undefined) throw new Error(`${trial} gives no limit`);
console.log(
  `\nTrial ${trial}: ${pairing.filament} on ${pairing.machine}, nozzle ${nozzle}, ${conditions?.nozzleTemperature} Cel.`,
);
console.log(
  `Melt flow limit ${limit.value.toPrecision(3)} mm3/s, 95 % interval ${limit.interval.low?.toPrecision(3)} to ${limit.interval.high?.toPrecision(3)} mm3/s.`,
);

const table = deriveTables(loaded.registry, { ...pairing, nozzle }, { today });
if (!table.ok) throw new Error(table.error.message);
console.log(`\nWhat that allows by the house policy "${pairing.policy}", and what holds each speed there:\n`);
const shown = table.value.rows.filter(onlyOneWidth).slice(0, 12);
const columns = [
  { heading: 'feature', align: 'left' },
  { heading: 'layer mm', align: 'right' },
  { heading: 'line mm', align: 'right' },
  { heading: 'mm/s', align: 'right' },
  { heading: 'mm3/s', align: 'right' },
  { heading: 'Cel', align: 'right' },
  { heading: 'limited by', align: 'left' },
  { heading: 'basis', align: 'left' },
] as const;
const cells = shown.map((row) =>
  [
    row.feature,
    row.layerHeight,
    row.lineWidth,
    row.speed,
    row.flow,
    row.nozzleTemperature,
    row.bound,
    row.basis,
  ].map(String),
);
for (const line of alignedCells(columns, cells)) console.log(`  ${line.join('  ').trimEnd()}`);

const out = join(root, 'out');
const written = await writeFiles(tableFiles(table.value), out, 'out', root);
if (!written.ok) throw new Error(written.error.message);
console.log(`\nThe full table (${table.value.rows.length} rows):`);
for (const file of written.value) console.log(`  out/${file}`);
const site = await syncFolder(formatSite(loaded.registry, today), join(out, 'site'), 'out/site', root);
if (!site.ok) throw new Error(site.error.message);
console.log(
  `\nThe catalogue of the registry, ${site.value.files} files: open out/site/index.html in a browser.`,
);
console.log(
  '\nStarting points for supervised trials: follow the manual of the machine, local codes and qualified people.',
);

/** Of the layer heights and line widths of the table, one height in the middle and one width, so that the list is short. */
function onlyOneWidth({ lineWidth, layerHeight }: SpeedRow, _: number, rows: readonly SpeedRow[]): boolean {
  const heights = [...new Set(rows.map((row) => row.layerHeight))];
  const wanted = heights.slice(0, 2);
  return lineWidth === rows[0]?.lineWidth && wanted.includes(layerHeight);
}
