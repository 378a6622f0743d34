import { simulateScale } from './scale/simulate-scale.ts';

// Usage: npm run simulate-scale -- FOLDER PROFILES [bare]; a bare one has no readings.
const [folder, wanted = '1000', option] = process.argv.slice(2);
const count = Number(wanted);
const isKnown = option === undefined || option === 'bare';
if (folder === undefined || !Number.isInteger(count) || count < 1 || !isKnown) {
  console.error('Usage: npm run simulate-scale -- FOLDER PROFILES [bare], for instance: out/scale 10000');
  process.exit(2);
}
const written = simulateScale(folder, count, option === undefined);
console.log(`${written} profiles under ${folder}/profiles`);
