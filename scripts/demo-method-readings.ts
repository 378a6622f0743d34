import { fileURLToPath } from 'node:url';
import { type RandomSource, randomSource } from '../src/statistics/random.ts';

/** An invented trial of the demo registry that is no flow ladder, with the truth that its readings are drawn around. */
export interface DemoSeries {
  /** The trial that holds the readings. */
  readonly trial: string;
  /** What its readings are drawn around, in words. */
  readonly truth: string;
  /** Rows as the instruments show them. */
  readonly rows: (random: RandomSource) => readonly (readonly string[])[];
}

const spread = (settings: readonly number[], repeats: number) =>
  settings.flatMap((setting) => Array<number>(repeats).fill(setting));

const upTo = (first: number, last: number, step: number) =>
  Array.from({ length: Math.round((last - first) / step) + 1 }, (_, index) => first + index * step);

/** Thickness of a filament that swells and shrinks along its length in m, mm. */
function survey(mean: number, swing: number, oval: number, places: readonly number[], decimals: number) {
  return (random: RandomSource) =>
    places.map((place) => {
      const middle = mean + swing * Math.sin(place / 0.9) + 0.15 * swing * random.normal();
      const read = (side: number) => (middle + (side * oval) / 2 + 0.001 * random.normal()).toFixed(decimals);
      return [String(place), read(1), read(-1)];
    });
}

/** Bond strength in MPa that falls off on both sides of the best temperature in Cel. */
function strengths(best: number, widths: readonly [number, number], temperatures: readonly number[]) {
  return (random: RandomSource) =>
    spread(temperatures, 3).map((temperature) => {
      const width = widths[temperature < best ? 0 : 1];
      const strength = 31 * Math.exp(-(((temperature - best) / width) ** 2));
      return [String(temperature), (strength * Math.exp(0.05 * random.normal())).toFixed(1)];
    });
}

/** Depth of a ripple in um that grows with the speed in mm/s and reaches 20 um at the limit. */
function ripples(limit: number, speeds: readonly number[]) {
  return (random: RandomSource) =>
    spread(speeds, 2).map((speed) => {
      const ripple = 20 * (speed / limit) ** 2.2 * Math.exp(0.08 * random.normal());
      return [String(speed), ripple.toFixed(0)];
    });
}

/** Grades of a quality that passes 3.5 at the limit. */
function grades(limit: number, width: number, settings: readonly number[]) {
  return (random: RandomSource) =>
    spread(settings, 2).map((setting) => {
      const quality = 3.5 + (setting - limit) / width + 0.25 * random.normal();
      return [String(setting), String(Math.min(5, Math.max(1, Math.round(quality))))];
    });
}

/** Mass in g of a drying spool, time in h. */
function drying(dry: number, water: number, timeConstant: number, times: readonly number[]) {
  return (random: RandomSource) =>
    times.map((time) => {
      const mass = dry + water * Math.exp(-time / timeConstant) + 0.01 * random.normal();
      return [String(time), mass.toFixed(2)];
    });
}

/** Levels in dB(A) around a machine and of the room, distances in m. */
function levels(atOneMetre: number, room: number, distances: readonly number[]) {
  return (random: RandomSource) =>
    distances.map((distance) => {
      const alone = atOneMetre - 20 * Math.log10(distance) + 0.8 * random.normal();
      const background = room + 0.4 * random.normal();
      const together = 10 * Math.log10(10 ** (alone / 10) + 10 ** (background / 10));
      return [distance.toFixed(1), together.toFixed(1), background.toFixed(1)];
    });
}

/** Times in s of moves to and fro, by a stop watch in the hand; how many, and their lengths in mm, as a plan lays them out. */
function shuttles(
  machine: { readonly speed: number; readonly acceleration: number; readonly pause: number },
  commanded: number,
  lengths: readonly number[],
) {
  return (random: RandomSource) =>
    [commanded / 2, commanded].flatMap((asked) =>
      lengths.map((length) => {
        const { acceleration, pause } = machine;
        const speed = Math.min(asked, machine.speed);
        const isLong = length >= speed ** 2 / acceleration;
        const each =
          pause + (isLong ? length / speed + speed / acceleration : 2 * Math.sqrt(length / acceleration));
        const moves = Math.max(10, Math.round(40 / each / 10) * 10);
        const duration = moves * each + 0.04 + 0.09 * random.normal();
        const shift = 0.02 * Math.round(random.normal());
        return [String(asked), String(length), String(moves), duration.toFixed(2), shift.toFixed(2)];
      }),
    );
}

/** Length of strings in mm that falls with the retraction in mm and is 0.5 mm at the least that holds. */
function strings(least: number, lengths: readonly number[]) {
  return (random: RandomSource) =>
    spread(lengths, 2).map((length) => {
      const size = 0.5 * (least / length) ** 2.6 * Math.exp(0.12 * random.normal());
      return [length.toFixed(1), size.toFixed(2)];
    });
}

/** Temperatures in Cel of a part that warms up from 22 Cel towards what it reaches, with a thermometer; times in min. */
function warming(
  part: { readonly offset: number; readonly slope: number; readonly constant: number },
  sets: readonly number[],
  times: readonly number[],
) {
  const middle = sets.reduce((sum, set) => sum + set, 0) / sets.length;
  return (random: RandomSource) =>
    sets.flatMap((set, index) => {
      const end = set + part.offset + part.slope * (set - middle);
      const before = index === 0 ? 22 : (sets[index - 1] ?? 22) + part.offset;
      return times.map((time) => {
        const here = end - (end - before) * Math.exp(-time / part.constant) + 0.25 * random.normal();
        return [String(set), String(time), here.toFixed(1)];
      });
    });
}

export const demoSeries: readonly DemoSeries[] = [
  {
    trial: 'stagecraft-pla-26-0131-diameter',
    truth: 'mean 1.762 mm',
    rows: survey(1.762, 0.024, 0.009, upTo(0, 9.5, 0.5), 3),
  },
  {
    trial: 'boards-pla-wd20-diameter',
    truth: 'mean 1.741 mm',
    rows: survey(1.741, 0.016, 0.02, upTo(0, 11, 1), 2),
  },
  {
    trial: 'lantern-stagecraft-petg-sweep',
    truth: '90 % of the best strength from 232 to 256 Cel',
    rows: strengths(245, [40, 34], upTo(220, 265, 5)),
  },
  {
    trial: 'hearth-rigging-abs-contour',
    truth: '20 um at 129 mm/s',
    rows: ripples(129, upTo(60, 220, 20)),
  },
  {
    trial: 'skiff-stagecraft-pla-contour',
    truth: 'quality 3.5 at 69 mm/s',
    rows: grades(69, -14, upTo(40, 110, 10)),
  },
  {
    trial: 'skiff-stagecraft-pla-layer-time',
    truth: 'quality 3.5 at 6.4 s',
    rows: grades(6.4, 1.8, [3, 4, 5, 6, 7, 8, 10, 12]),
  },
  {
    trial: 'hearth-rigging-abs-layer-time',
    truth: 'quality 3.5 at 10.5 s',
    rows: grades(10.5, 2.4, [4, 6, 8, 10, 12, 15, 20]),
  },
  {
    trial: 'truss-pa6-cf15-drying',
    truth: '0.2 % of water left after 8.9 h',
    rows: drying(927.4, 14.6, 3.9, [0, 1, 2, 3, 4, 6, 8, 10, 13, 16, 20, 24]),
  },
  {
    trial: 'pulley-pa12-drying',
    truth: '0.1 % of water left after 5.2 h',
    rows: drying(926.1, 5.9, 2.5, [0, 1, 2, 3, 4, 6, 8, 10, 13, 16]),
  },
  {
    trial: 'lantern-sound',
    truth: '54.2 dB(A) at 1 m',
    rows: levels(54.2, 36, [1, 1, 1, 1, 1.5, 2]),
  },
  {
    trial: 'hearth-motion',
    truth: '328 mm/s and 6150 mm/s2 reached, a pause of 9 ms',
    rows: shuttles({ speed: 328, acceleration: 6150, pause: 0.009 }, 330, [2, 4, 8, 16, 40, 80, 160]),
  },
  {
    trial: 'lantern-stagecraft-pla-retraction',
    truth: 'strings of 0.5 mm at 0.74 mm',
    rows: strings(0.74, upTo(0.2, 1.6, 0.2)),
  },
  {
    trial: 'skiff-stagecraft-pla-bridge',
    truth: 'quality 3.5 at 47 mm/s',
    rows: grades(47, -11, upTo(20, 80, 10)),
  },
  {
    trial: 'hearth-chamber-check',
    truth: '5.2 K colder than set at 75 Cel, 6 K at 95 Cel',
    rows: warming({ offset: -5.2, slope: -0.04, constant: 14 }, [55, 75, 95], upTo(10, 90, 10)),
  },
  {
    trial: 'lantern-dryer-check',
    truth: '2.6 K colder than set',
    rows: warming({ offset: -2.6, slope: 0, constant: 9 }, [51], upTo(5, 60, 5)),
  },
  { trial: 'skiff-sound', truth: '49.3 dB(A) at 1 m', rows: levels(49.3, 38, [1, 1, 1, 1, 1.5]) },
];

/** The readings of a series, the same on every machine. */
export function demoRows({ trial, rows }: DemoSeries): readonly (readonly string[])[] {
  return rows(randomSource(trial));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const asked = process.argv.slice(2);
  for (const series of demoSeries.filter(({ trial }) => asked.length === 0 || asked.includes(trial))) {
    const rows = demoRows(series).map((row) => `    - [${row.join(', ')}]`);
    console.log([`# ${series.trial}: ${series.truth}`, ...rows].join('\n'));
  }
}
