/**
 * How many altered readings the whole check finds in sheets that nobody has adopted yet: honest sheets of simulated benches with
 * one reading altered, or rows told twice, pasted or copied from another trial.
 * Usage: npm run altered-sheets -- [METHOD|all] [SHEETS] [SEED] [KIND] [--list]
 */
import { countAltered } from './sheets/count-altered.ts';
import { readSheetArguments } from './sheets/sheet-arguments.ts';
import { alteredTable } from './sheets/sheet-tables.ts';

const { methods, count, seed, kind, lists } = readSheetArguments(process.argv.slice(2));
for (const method of methods) {
  console.log(alteredTable(countAltered({ method, count, seed }, kind), lists));
}
