import { compareText } from '../../registry/finding.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import type { Profile } from '../../registry/profile.ts';
import { oncePerRegistry } from '../../registry/registry.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/**
 * What a room is like on the days about a run: how far apart its other readings are at most to tell anything of it, and how
 * far off a reading is that is none of it, in K and as a fraction (common practice, no source).
 */
const rooms = {
  ambientTemperature: { name: 'room temperature', dimension: 'temperature', alike: 4, off: 7 },
  relativeHumidity: { name: 'relative humidity', dimension: 'ratio', alike: 0.15, off: 0.3 },
} as const;
const daysAbout = 7;
const fewestOthers = 2;
/** Runs before and behind a run that are looked at, so that a bench with many costs no more. */
const mostEachWay = 12;
const rounding = 1e-9;

type RoomKey = keyof typeof rooms;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'The room of a trial is like that of the other trials of its bench on the days about it.',
  rationale:
    'A room reads 12 °C or 84 % where digits changed places, or the run stood in another room than its result is used for.',
  source: `Common practice, no source: within ${daysAbout} days the room of one operator and machine stays within ${rooms.ambientTemperature.off} K and ${100 * rooms.relativeHumidity.off} points of what at least ${fewestOthers} other runs agree on, to ${rooms.ambientTemperature.alike} K and ${100 * rooms.relativeHumidity.alike} points.`,
  example: alike(
    'trial',
    { bad: '12 Cel', good: '24 Cel' },
    (temperature) => `
conditions: {nozzleTemperature: 245 Cel, bedTemperature: 75 Cel, ambientTemperature: ${temperature}}`,
  ),
  *check(profile, { registry }) {
    const others = runsAbout(benches(registry).get(benchOf(profile)), profile);
    for (const key of Object.keys(rooms) as RoomKey[]) {
      const found = profile.data.conditions[key];
      const range = found === undefined ? null : rangeOf(others, key);
      if (found === undefined || range === null) continue;
      const { name, dimension, off } = rooms[key];
      if (found >= range.low - off - rounding && found <= range.high + off + rounding) continue;
      const about = range.low === range.high ? shown(range.low, dimension) : shownRange(range, dimension);
      yield {
        path: ['conditions', key],
        part: 'value',
        message: `The ${name} is ${shown(found, dimension)}, and ${about} in ${range.count} other trials of this bench within ${daysAbout} days`,
        found: shown(found, dimension),
        allowed: `about ${about}`,
        help: 'Compare with the bench sheet: digits that changed places, another unit. If the room was like that, say so in a field note and acknowledge the finding.',
      };
    }
  },
};

interface Bench {
  readonly runs: readonly Profile<'trial'>[];
  readonly places: ReadonlyMap<string, number>;
}

/** Runs by one operator on one machine, or on none, in the order of their dates; those without an operator may be of many rooms. */
const benches = oncePerRegistry((registry): ReadonlyMap<string, Bench> => {
  const named = [...registry.trial.values()].filter(({ data }) => data.operator !== undefined);
  const ordered = named.sort(
    (one, other) => compareText(one.data.date, other.data.date) || compareText(one.id, other.id),
  );
  return new Map(
    [...groupedBy(ordered, benchOf)].map(([bench, runs]) => [
      bench,
      { runs, places: new Map(runs.map(({ id }, place) => [id, place])) },
    ]),
  );
});

function benchOf({ data: { operator, machine, origin } }: Profile<'trial'>): string {
  return JSON.stringify([operator ?? null, machine ?? null, origin]);
}

const dayLength = 86_400_000;

function runsAbout(bench: Bench | undefined, { id, data: { date } }: Profile<'trial'>): Profile<'trial'>[] {
  const place = bench?.places.get(id);
  if (bench === undefined || place === undefined) return [];
  const day = Date.parse(date);
  return bench.runs
    .slice(Math.max(0, place - mostEachWay), place + mostEachWay + 1)
    .filter(
      (other) => other.id !== id && Math.abs(Date.parse(other.data.date) - day) <= daysAbout * dayLength,
    );
}

interface RoomRange {
  readonly low: number;
  readonly high: number;
  readonly count: number;
}

/** What other runs agree on, if they do. */
function rangeOf(others: readonly Profile<'trial'>[], key: RoomKey): RoomRange | null {
  const values = others.flatMap(({ data }) => data.conditions[key] ?? []);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return values.length >= fewestOthers && high - low <= rooms[key].alike + rounding
    ? { low, high, count: values.length }
    : null;
}
