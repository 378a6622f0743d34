import { type LadderSettingName, ladderSettings } from '../../src/bench/setting-ladder/ladder-settings.ts';
import { type RandomSource, randomSource } from '../../src/statistics/random.ts';
import type { SimulatedBench } from './simulated-bench.ts';

/** Size of the setting that holds, in the canonical unit. */
const usual = {
  retractionLength: 0.9,
  retractionSpeed: 40,
  pressureCompensation: 0.035,
  stickingSpeed: 60,
  bridgeSpeed: 45,
  overhangSpeed: 70,
  fan: 0.55,
} as const satisfies Readonly<Record<LadderSettingName, number>>;

const between = (random: RandomSource, low: number, high: number) => low + (high - low) * random.uniform();

/** How many times the accepted size a defect has, at a setting: 1 at what just holds. */
interface Ladder {
  readonly sizeAt: (setting: number) => number;
  readonly highest: number;
  readonly truths: Readonly<Record<string, number>>;
}

function oneSided(name: LadderSettingName, sudden: boolean, random: RandomSource): Ladder {
  const limit = usual[name] * between(random, 0.7, 1.4);
  const steepness = sudden ? between(random, 15, 60) : between(random, 1.5, 6);
  const power = steepness * (ladderSettings[name].holds === 'fromLeast' ? -1 : 1);
  return {
    sizeAt: (setting) => Math.max(setting / limit, 1e-3) ** power,
    highest: limit * between(random, 1.6, 2.6),
    truths: { [name]: limit },
  };
}

/** Worse on both sides of a best setting, as steeply or not. */
function windowed(name: LadderSettingName, sudden: boolean, random: RandomSource): Ladder {
  const best = usual[name] * between(random, 0.85, 1.15);
  const [below, above] = [best * between(random, 0.25, 0.5), best * between(random, 0.25, 0.5)];
  const power = sudden ? between(random, 8, 30) : between(random, 1.2, 2.5);
  const [low, high] = [best - below, best + above];
  return {
    sizeAt: (setting) => 0.25 + 0.75 * (Math.abs(setting - best) / (setting < best ? below : above)) ** power,
    highest: name === 'fan' ? 1 : best * 2,
    truths: name === 'fan' ? { lowestFan: low, highestFan: high } : { [name]: (low + high) / 2 },
  };
}

/** A ladder of an invented bench, each setting in turn, graded and measured in turn. */
export function simulateSetting(index: number, noise?: RandomSource): SimulatedBench {
  const random = randomSource(`setting ${index}`);
  const { normal } = noise ?? random;
  const names = Object.keys(ladderSettings) as LadderSettingName[];
  const name = names[index % names.length] ?? 'retractionLength';
  const graded = Math.floor(index / names.length) % 2 === 0;
  const sudden = Math.floor(index / names.length / 2) % 2 === 1;
  const { holds } = ladderSettings[name];
  const ladder =
    holds === 'fromLeast' || holds === 'upToHighest'
      ? oneSided(name, sudden, random)
      : windowed(name, sudden, random);
  const steps = 7 + Math.floor(random.uniform() * 6);
  const repeats = 1 + Math.floor(random.uniform() * 3);
  const settings = Array.from(
    { length: steps },
    (_, step) => (ladder.highest * (step + 0.5)) / (steps - 0.5),
  ).flatMap((setting) => Array<number>(repeats).fill(setting));
  const accepted = 0.3;
  const scatter = between(random, 0.05, 0.2);
  const readings = settings.map((setting) => {
    const size = Math.min(ladder.sizeAt(setting), 60);
    if (!graded) return Math.round(100 * accepted * size * Math.exp(scatter * normal())) / 100;
    // A grade falls with the logarithm of the defect, and passes 3.5 at the accepted size.
    return Math.min(5, Math.max(1, Math.round(3.5 - 1.8 * Math.log(size) + 0.25 * normal())));
  });
  return {
    kind: `${sudden ? 'sudden' : 'gradual'}, ${graded ? 'graded' : 'measured'}`,
    columns: { [name]: settings, [graded ? 'grade' : 'defectSize']: readings },
    run: graded ? {} : { acceptedDefect: accepted },
    truths: ladder.truths,
  };
}
