import { groupedBy } from '../../registry/grouped-by.ts';
import { describe } from '../../statistics/describe.ts';
import { oneAfterAnother, type ScaledReading, type Unexpected } from './doubtful-reading.ts';
import { chanceOf, isUnlikely } from './unlikely.ts';

/** What is known of a series of readings over a setting before any of them. */
export interface SeriesCourse {
  /** How the readings go with the setting, where that is known. */
  readonly course: 'falling' | 'rising' | 'any';
  /** The same for the readings between others; that of all unless given. */
  readonly inside?: SeriesCourse['course'];
  /** How a reading may scatter, given the steps without the judged one. */
  readonly scatterAt: (level: number, others: readonly StepOfOthers[]) => readonly PossibleScatter[];
  /** Step of the display at a level. */
  readonly resolutionAt: (level: number) => number;
  /** A smaller deviation is no slip, however little the others scatter. */
  readonly least: number;
  /** How many times the change between the two steps beside it an end of the series may go on by; any unless given. */
  readonly endsWithin?: { readonly first?: number; readonly last?: number };
}

/** A standard deviation, the degrees of freedom that it is known to, and how probable it is among others. */
export interface PossibleScatter {
  readonly probability: number;
  readonly deviation: number;
  readonly freedom: number;
}

/** What was read at one setting. */
export interface StepOfOthers {
  readonly x: number;
  readonly mean: number;
  readonly count: number;
  /** Sum of the squared deviations from the mean. */
  readonly squares: number;
}

/** The readings that neither their repeats nor the steps beside them let expect. */
export function doubtfulInSeries(readings: readonly ScaledReading[], course: SeriesCourse): Unexpected[] {
  return oneAfterAnother(readings, (rest) => worstOf(rest, course));
}

interface Step extends StepOfOthers {
  readonly readings: readonly ScaledReading[];
}

interface Judged extends Unexpected {
  readonly chance: number;
  /** How far the reading is from what the steps beside it allow, and from the straight line between them. */
  readonly outside: number;
  readonly offLine: number;
}

/** Of two repeats that contradict each other, chances within this factor do not tell which is off. */
const asLikely = 1.01;

/** A reading is off, and not its repeat, where the steps beside it do not allow so much of their difference. */
const tellingShare = 0.5;

/** How many readings are set aside, one at a time, to see whether they hide another one. */
const mostSetAside = 2;

function worstOf(readings: readonly ScaledReading[], course: SeriesCourse): Unexpected | null {
  const judged = judgeAll(readings, course);
  return farthest(judged, 1, course) ?? hidden(readings, judged, course);
}

function judgeAll(readings: readonly ScaledReading[], course: SeriesCourse): Judged[] {
  const steps = stepsOf(readings);
  return steps.flatMap((step, place) => step.readings.map((reading) => judge(reading, place, steps, course)));
}

/** The reading that chance explains least, where it does not explain it in so many choices. */
function farthest(judged: readonly Judged[], choices: number, { least }: SeriesCourse): Unexpected | null {
  const smallest = Math.min(...judged.map(({ chance }) => chance));
  if (!isUnlikely(choices * smallest)) return null;
  const [worst] = judged
    .filter(({ chance }) => chance <= smallest * asLikely)
    .toSorted((one, other) => other.outside - one.outside || other.offLine - one.offLine);
  if (worst === undefined) return null;
  const { reading, expected, spread, rival, outside } = worst;
  const off = Math.abs(reading.y - expected);
  if (off < least) return null;
  return { reading, expected, spread, rival: outside > off * tellingShare ? null : rival };
}

/** One of two readings that hide each other, since each makes the others seem to scatter: each is unlikely without the other. */
function hidden(
  readings: readonly ScaledReading[],
  judged: readonly Judged[],
  course: SeriesCourse,
): Unexpected | null {
  const suspects = judged.toSorted((one, other) => one.chance - other.chance).slice(0, mostSetAside);
  const without = (reading: ScaledReading) =>
    farthest(
      judgeAll(
        readings.filter((each) => each !== reading),
        course,
      ),
      readings.length / 2,
      course,
    );
  for (const { reading } of suspects) {
    const found = without(reading);
    if (found !== null && without(found.reading)?.reading === reading) return found;
  }
  return null;
}

function stepsOf(readings: readonly ScaledReading[]): Step[] {
  return [...groupedBy(readings, ({ x }) => String(x)).values()]
    .map((group) => stepOf(group))
    .sort((one, other) => one.x - other.x);
}

function stepOf(readings: readonly ScaledReading[]): Step {
  const { count, mean, standardDeviation } = describe(readings.map(({ y }) => y));
  const squares = count > 1 ? (count - 1) * standardDeviation ** 2 : 0;
  return { x: readings[0]?.x ?? Number.NaN, mean, count, squares, readings };
}

function judge(reading: ScaledReading, place: number, steps: readonly Step[], course: SeriesCourse): Judged {
  const own = (steps[place]?.readings ?? []).filter((each) => each !== reading);
  const readings = steps.reduce((sum, { count }) => sum + count, 0);
  const others = own.length > 0 ? steps.with(place, stepOf(own)) : steps.toSpliced(place, 1);
  const besides = steps.toSpliced(place, 1);
  const { low, high } = corridor(reading.x, besides, place, course);
  const inside = Math.min(Math.max(reading.y, low), high);
  const ofOwn = own.length > 0 ? (others[place]?.mean ?? inside) : null;
  const expected = ofOwn ?? inside;
  const alike = ofOwn === null ? 2 : own.length;
  const display = course.resolutionAt(expected) / Math.sqrt(12);
  const scatters = course.scatterAt(expected, others).map(({ probability, deviation, freedom }) => {
    const spread = Math.hypot(deviation * Math.sqrt(1 + 1 / alike), display);
    return { probability, spread, chance: chanceOf((reading.y - expected) / spread, freedom, readings) };
  });
  const mean = (of: (each: (typeof scatters)[number]) => number) =>
    scatters.reduce((sum, each) => sum + each.probability * of(each), 0);
  const [only] = own.length === 1 ? own : [];
  return {
    ...{ reading, expected, rival: only ?? null },
    outside: Math.abs(reading.y - inside),
    offLine: Math.abs(reading.y - lineAt(reading.x, besides, place, inside)),
    spread: Math.sqrt(mean(({ spread }) => spread ** 2)),
    chance: mean(({ chance }) => chance),
  };
}

interface Corridor {
  readonly low: number;
  readonly high: number;
}

/**
 * Between which levels a curve passes a setting: those of the steps on both sides, and what the slopes beyond them would give there, as
 * far as the course allows that. `besides` are the other steps, and `place` that of the first one behind.
 */
function corridor(
  x: number,
  besides: readonly Step[],
  place: number,
  { course, inside = course, endsWithin = {} }: SeriesCourse,
): Corridor {
  const [before, after] = [besides[place - 1], besides[place]];
  const [farBefore, farAfter] = [besides[place - 2], besides[place + 1]];
  if (before === undefined || after === undefined) {
    return before === undefined
      ? endCorridor(x, after, farAfter, { course, within: endsWithin.first })
      : endCorridor(x, before, farBefore, { course, within: endsWithin.last });
  }
  const between = [before.mean, after.mean];
  const slopes = [continued(x, before, farBefore), continued(x, after, farAfter)].flatMap(
    (each) => each ?? [],
  );
  const all = [...between, ...slopes];
  if (inside === 'any') return { low: Math.min(...all), high: Math.max(...all) };
  return { low: Math.min(...between), high: Math.max(...between) };
}

/** The straight line between the steps on both sides, or through the two at an end; what is given where there are none. */
function lineAt(x: number, besides: readonly Step[], place: number, otherwise: number): number {
  const [behind, before] = [besides[place], besides[place - 1]];
  const near = behind ?? before;
  const far = behind === undefined ? besides[place - 2] : (before ?? besides[place + 1]);
  return (near && continued(x, near, far)) ?? otherwise;
}

/** What the straight line through two steps gives at a setting. */
function continued(x: number, near: Step, far: Step | undefined): number | null {
  return far === undefined ? null : near.mean + ((near.mean - far.mean) / (near.x - far.x)) * (x - near.x);
}

function endCorridor(
  x: number,
  near: Step | undefined,
  far: Step | undefined,
  { course, within }: Pick<SeriesCourse, 'course'> & { readonly within: number | undefined },
): Corridor {
  if (near === undefined) return { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };
  const change =
    within === undefined || far === undefined
      ? Number.POSITIVE_INFINITY
      : within * Math.abs(((near.mean - far.mean) / (near.x - far.x)) * (x - near.x));
  const isBehind = x > near.x;
  const mayRise = course === 'any' || (course === 'rising') === isBehind;
  const mayFall = course === 'any' || (course === 'falling') === isBehind;
  return {
    low: mayFall ? near.mean - change : near.mean,
    high: mayRise ? near.mean + change : near.mean,
  };
}

/** Scatter within steps, pooled, with what is known of it beforehand. */
export function pooledScatter(
  steps: readonly StepOfOthers[],
  usual: { readonly scatter: number; readonly freedom: number },
): PossibleScatter[] {
  const freedom = steps.reduce((sum, { count }) => sum + count - 1, usual.freedom);
  const squares = steps.reduce((sum, step) => sum + step.squares, usual.freedom * usual.scatter ** 2);
  return [{ probability: 1, deviation: Math.sqrt(squares / freedom), freedom }];
}
