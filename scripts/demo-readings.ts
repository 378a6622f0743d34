import { fileURLToPath } from 'node:url';
import { randomSource } from '../src/statistics/random.ts';

/** An invented flow ladder of the demo registry, with the limit that its readings are drawn around. */
export interface DemoLadder {
  /** The trial that holds the readings. */
  readonly trial: string;
  /** Flow at which 5 % is missing against the lowest step, mm3/s. */
  readonly limit: number;
  /** How steep the fall is: the power of the bend into the ceiling. */
  readonly sharpness: number;
  /** Commanded flows, mm3/s. */
  readonly flows: readonly number[];
  readonly repeats: number;
  readonly filament: keyof typeof filaments;
  /** Mass of the filament against its nominal diameter and density. */
  readonly offset: number;
  /** mm */
  readonly feedLength: number;
  /** Decimals of the scale in g. */
  readonly decimals: 2 | 3;
  /** Where the readings stand. */
  readonly form: 'inline' | 'csv';
}

const acceptedDeficit = 0.05;
/** Relative spread of a repeat, before the scale rounds it. */
const repeatability = 0.004;
/** Share that the drive slips at the limit, on top of the fall; it grows with the flow. */
const drift = 0.006;

/** Diameter in mm, density in g/mm3. */
const filaments = {
  pla: { diameter: 1.75, density: 1.24e-3 },
  plaWood: { diameter: 1.75, density: 1.26e-3 },
  plaThick: { diameter: 2.85, density: 1.24e-3 },
  petg: { diameter: 1.75, density: 1.27e-3 },
  abs: { diameter: 1.75, density: 1.04e-3 },
  asa: { diameter: 1.75, density: 1.07e-3 },
  pc: { diameter: 1.75, density: 1.2e-3 },
  pa12: { diameter: 1.75, density: 1.01e-3 },
  pa6Carbon: { diameter: 1.75, density: 1.2e-3 },
  tpu: { diameter: 1.75, density: 1.21e-3 },
} as const;

const upTo = (first: number, last: number, step: number): readonly number[] =>
  Array.from({ length: Math.round((last - first) / step) + 1 }, (_, index) => first + index * step);

const fine = { repeats: 2, feedLength: 400, decimals: 3 } as const;
const pocket = { repeats: 2, feedLength: 1000, decimals: 2 } as const;
const lanternPla = {
  ...fine,
  filament: 'pla',
  sharpness: 18,
  offset: 1.006,
  flows: upTo(20, 56, 4),
} as const;

// The four limits of the series stand in the ratio of Q = pi a L/Fo with the core at 150 Cel on leaving the melt zone and
// the filament at 22 Cel on entering it.
export const demoLadders: readonly DemoLadder[] = [
  { ...lanternPla, trial: 'lantern-stagecraft-pla-210', limit: 41.1, form: 'csv' },
  { ...lanternPla, trial: 'lantern-stagecraft-pla-220', limit: 43.9, form: 'csv' },
  { ...lanternPla, trial: 'lantern-stagecraft-pla-230', limit: 46.4, form: 'inline' },
  { ...lanternPla, trial: 'lantern-stagecraft-pla-240', limit: 48.9, form: 'inline' },
  {
    ...fine,
    trial: 'lantern-stagecraft-pla-230-fine',
    limit: 31.2,
    sharpness: 20,
    flows: upTo(12, 39, 3),
    filament: 'pla',
    offset: 1.006,
    form: 'inline',
  },
  {
    ...pocket,
    trial: 'lantern-boards-pla-wd20-220',
    limit: 34.4,
    sharpness: 14,
    flows: upTo(14, 42, 4),
    repeats: 1,
    filament: 'plaWood',
    offset: 0.978,
    form: 'inline',
  },
  {
    ...fine,
    trial: 'lantern-stagecraft-petg-245',
    limit: 39.6,
    sharpness: 20,
    flows: upTo(16, 43, 3),
    filament: 'petg',
    offset: 0.994,
    form: 'inline',
  },
  {
    ...pocket,
    trial: 'lantern-gaiter-tpu-230',
    limit: 20.8,
    sharpness: 12,
    flows: upTo(8, 24, 2),
    filament: 'tpu',
    offset: 1.012,
    form: 'inline',
  },
  {
    ...pocket,
    trial: 'skiff-stagecraft-pla-220',
    limit: 14.5,
    sharpness: 16,
    flows: upTo(6, 20, 2),
    repeats: 3,
    filament: 'pla',
    offset: 1.034,
    form: 'inline',
  },
  {
    ...fine,
    trial: 'steeple-stagecraft-pla-230',
    limit: 45.4,
    sharpness: 22,
    flows: upTo(20, 60, 5),
    filament: 'pla',
    offset: 0.998,
    form: 'inline',
  },
  {
    ...fine,
    trial: 'steeple-stagecraft-pla-235',
    limit: 69.4,
    sharpness: 24,
    flows: upTo(30, 86, 7),
    repeats: 3,
    filament: 'pla',
    offset: 0.998,
    form: 'csv',
  },
  {
    ...pocket,
    trial: 'barge-stagecraft-pla-285-225',
    limit: 75,
    sharpness: 20,
    flows: upTo(24, 64, 5),
    filament: 'plaThick',
    offset: 1.009,
    feedLength: 400,
    form: 'inline',
  },
  {
    ...fine,
    trial: 'hearth-rigging-abs-255',
    limit: 29.2,
    sharpness: 18,
    flows: upTo(12, 40, 4),
    repeats: 3,
    filament: 'abs',
    offset: 1.003,
    form: 'csv',
  },
  {
    ...fine,
    trial: 'hearth-truss-pa6-cf15-275',
    limit: 31.7,
    sharpness: 18,
    flows: upTo(12, 27, 3),
    filament: 'pa6Carbon',
    offset: 0.989,
    form: 'inline',
  },
  {
    ...fine,
    trial: 'lantern-stagecraft-petg-235',
    limit: 37.4,
    sharpness: 20,
    flows: upTo(15, 45, 3),
    filament: 'petg',
    offset: 0.994,
    form: 'inline',
  },
  {
    ...fine,
    trial: 'lantern-stagecraft-petg-255',
    limit: 41.8,
    sharpness: 20,
    flows: upTo(18, 51, 3),
    filament: 'petg',
    offset: 0.994,
    form: 'inline',
  },
  {
    ...fine,
    trial: 'hearth-rigging-abs-245',
    limit: 27.5,
    sharpness: 18,
    flows: upTo(12, 40, 4),
    filament: 'abs',
    offset: 1.003,
    form: 'inline',
  },
  {
    ...fine,
    trial: 'hearth-daylight-asa-255',
    limit: 28.2,
    sharpness: 18,
    flows: upTo(12, 39, 3),
    filament: 'asa',
    offset: 1.011,
    form: 'csv',
  },
  {
    ...fine,
    trial: 'hearth-visor-pc-285',
    limit: 24.8,
    sharpness: 16,
    flows: upTo(10, 34, 3),
    filament: 'pc',
    offset: 0.992,
    form: 'inline',
  },
  {
    ...fine,
    trial: 'hearth-pulley-pa12-255',
    limit: 30.9,
    sharpness: 20,
    flows: upTo(15, 42, 3),
    filament: 'pa12',
    offset: 1.004,
    form: 'inline',
  },
];

/** The readings of a ladder: commanded flow mm3/s, feed length mm, extruded mass g as the scale shows it. */
export function demoReadings(ladder: DemoLadder): readonly (readonly [number, number, string])[] {
  const random = randomSource(ladder.trial);
  const { diameter, density } = filaments[ladder.filament];
  const fed = ladder.feedLength * density * Math.PI * (diameter / 2) ** 2 * ladder.offset;
  const share = shareDelivered(ladder);
  return ladder.flows.flatMap((flow) =>
    Array.from({ length: ladder.repeats }, () => {
      const mass = fed * share(flow) * (1 + repeatability * random.normal());
      return [flow, ladder.feedLength, mass.toFixed(ladder.decimals)] as const;
    }),
  );
}

/** Share of the feed that comes out: it bends over into a ceiling, placed so that the deficit falls on the limit. */
function shareDelivered({ limit, sharpness, flows }: DemoLadder): (flow: number) => number {
  const shareAt = (ceiling: number) => (flow: number) =>
    (1 - (drift * flow) / limit) * (1 + (flow / ceiling) ** sharpness) ** (-1 / sharpness);
  const lowest = flows[0] ?? 0;
  let [below, above] = [0.8 * limit, 1.5 * limit];
  for (let halving = 0; halving < 60; halving++) {
    const ceiling = (below + above) / 2;
    const share = shareAt(ceiling);
    if (1 - share(limit) / share(lowest) > acceptedDeficit) below = ceiling;
    else above = ceiling;
  }
  return shareAt(above);
}

function printed(ladder: DemoLadder): string {
  const rows = demoReadings(ladder);
  const lines =
    ladder.form === 'csv'
      ? ['commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]', ...rows.map((row) => row.join(','))]
      : rows.map((row) => `    - [${row.join(', ')}]`);
  return [`# ${ladder.trial}: limit ${ladder.limit} mm3/s`, ...lines].join('\n');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const asked = process.argv.slice(2);
  const chosen = demoLadders.filter(({ trial }) => asked.length === 0 || asked.includes(trial));
  for (const ladder of chosen) console.log(printed(ladder));
}
