import { peakSpeedOfMove } from '../../physics/motion.ts';
import type { Plot, PlotMark, PlotPoint } from '../../plots/plot.ts';
import { wordsOf } from '../../text/words.ts';
import { printedUnit } from '../../units/print-symbols.ts';
import { clean } from '../../units/round-to-step.ts';
import type { Bound, SpeedRow, SpeedTable } from '../derive/speed-table.ts';

/** A feature's typical segment, and the speed that a move over it reaches at the acceleration of the feature. */
interface Reach {
  readonly features: readonly string[];
  /** mm */
  readonly segment: number;
  /** mm/s2 */
  readonly acceleration: number;
  /** mm/s */
  readonly speed: number;
}

/**
 * The peak speed that a stop-to-stop move reaches against its length, at the largest acceleration of the table, with
 * the typical segment of each feature at its own acceleration, named beside its mark, and the top speed of the machine.
 */
export function reachableSpeedPlot({ rows }: SpeedTable): Plot | null {
  const reaches = reachesOf(rows);
  if (reaches.length === 0) return null;
  const acceleration = Math.max(...reaches.map((reach) => reach.acceleration));
  const longest = 1.1 * Math.max(...reaches.map(({ segment }) => segment));
  const top = rows.flatMap(({ bounds }) => bounds).find(({ name }) => name === 'machine')?.speed;
  const highest = Math.max(peakSpeedOfMove(longest, acceleration), top ?? 0);
  return {
    title: 'Reachable speed against segment length',
    description: described(reaches, acceleration, top),
    x: { quantity: 'length of the segment', unit: 'mm', range: [0, longest] },
    y: { quantity: 'speed', unit: 'mm/s', range: [0, 1.06 * highest] },
    marks: [
      { kind: 'line', points: curve(acceleration, longest) },
      { kind: 'points', marker: 'dot', points: reaches.map(pointOf) },
      ...topMarks(top),
      ...reaches.map(nameAtMark),
      {
        kind: 'note',
        at: { x: 0.3 * longest, y: peakSpeedOfMove(0.3 * longest, acceleration) },
        text: `peak at ${accelerationText(acceleration)}`,
      },
    ],
  };
}

function pointOf({ segment, speed }: Reach): PlotPoint {
  return { x: segment, y: speed };
}

function nameAtMark(reach: Reach): PlotMark {
  return { kind: 'note', at: pointOf(reach), text: reach.features.map(wordsOf).join(', '), namesMark: true };
}

function topMarks(top: number | undefined): PlotMark[] {
  if (top === undefined) return [];
  return [{ kind: 'level', axis: 'y', at: top, label: `top speed that tables use, ${clean(top)} mm/s` }];
}

/** Denser where the curve bends. */
function curve(acceleration: number, longest: number) {
  return Array.from({ length: 41 }, (_, index) => {
    const x = longest * (index / 40) ** 2;
    return { x, y: peakSpeedOfMove(x, acceleration) };
  });
}

/** Features that share segment and acceleration share a point. */
function reachesOf(rows: readonly SpeedRow[]): Reach[] {
  const reaches = new Map<string, Reach>();
  for (const feature of new Set(rows.map((row) => row.feature))) {
    const motion = rows.find((row) => row.feature === feature)?.bounds.find(({ name }) => name === 'motion');
    const segment = termOf(motion, 'L');
    const acceleration = termOf(motion, 'a');
    if (motion === undefined || segment === null || acceleration === null) continue;
    const key = `${segment} ${acceleration}`;
    const features = [...(reaches.get(key)?.features ?? []), feature];
    reaches.set(key, { features, segment, acceleration, speed: motion.speed });
  }
  return [...reaches.values()];
}

function termOf(bound: Bound | undefined, symbol: string): number | null {
  return bound?.terms.find((term) => term.symbol === symbol)?.value ?? null;
}

function described(reaches: readonly Reach[], acceleration: number, top: number | undefined): string {
  const each = reaches.map(
    ({ features, segment, acceleration: own, speed }) =>
      `${features.map(wordsOf).join(', ')}: ${Math.floor(speed)} mm/s over ${segment} mm at ${accelerationText(own)}`,
  );
  const most = top === undefined ? '' : ` The top speed that tables use is ${clean(top)} mm/s.`;
  return `A move from stop to stop at ${accelerationText(acceleration)} peaks at the square root of acceleration times length. ${each.join('; ')}.${most}`;
}

function accelerationText(value: number): string {
  return `${value} ${printedUnit('mm/s2')}`;
}
