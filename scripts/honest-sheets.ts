/**
 * How often the whole check finds something in honest sheets: simulated benches of a method, each as a trial whose readings
 * nobody has adopted yet.
 * Usage: npm run honest-sheets -- [METHOD|all] [SHEETS] [SEED] [--list]
 */
import { countHonest } from './sheets/count-honest.ts';
import { readSheetArguments } from './sheets/sheet-arguments.ts';
import { honestTable } from './sheets/sheet-tables.ts';

const { methods, count, seed, lists } = readSheetArguments(process.argv.slice(2));
for (const method of methods) {
  console.log(honestTable(countHonest({ method, count, seed }), lists));
}
