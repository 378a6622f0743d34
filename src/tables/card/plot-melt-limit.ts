import { fitLimitLine, type LimitLine, type LimitPoint } from '../../bench/limit-line/limit-line.ts';
import { limitAt } from '../../bench/limit-line/limit-line-answers.ts';
import type { Plot, PlotMark, PlotPoint } from '../../plots/plot.ts';
import { printedUnit } from '../../units/print-symbols.ts';
import { clean } from '../../units/round-to-step.ts';
import type { SpeedTable } from '../derive/speed-table.ts';

const unit = printedUnit('mm3/s');

/**
 * The melt flow limits against the nozzle temperature, with their 95 % intervals; a line with its 95 % band where at
 * least two temperatures were tested with intervals, and a level at the largest flow of the table.
 */
export function meltLimitPlot({ meltLimits, rows }: SpeedTable): Plot {
  const measured = meltLimits.flatMap(({ nozzleTemperature, value, ground }): LimitPoint[] =>
    ground.interval === null ? [] : [{ temperature: nozzleTemperature, limit: value, ...ground.interval }],
  );
  const bare = meltLimits.filter(({ ground }) => ground.interval === null);
  const line = fitLimitLine(measured);
  const largest = Math.max(...rows.map(({ flow }) => flow));
  const temperatures = meltLimits.map(({ nozzleTemperature }) => nozzleTemperature);
  const [coolest, hottest] = [Math.min(...temperatures), Math.max(...temperatures)];
  return {
    title: 'Melt flow limit against nozzle temperature',
    description: describedLimits(meltLimits, line.ok, largest),
    x: { quantity: 'nozzle temperature', unit: '°C', range: [coolest - 5, hottest + 5] },
    y: { quantity: 'melt flow', unit },
    marks: [
      ...(line.ok ? lineMarks(line.value) : []),
      ...intervalMarks(measured),
      ...pointMarks(bare),
      { kind: 'level', axis: 'y', at: largest, label: `largest flow of the table, ${largest} ${unit}` },
    ],
  };
}

/** The band has a waist, so it is drawn through several temperatures. */
function lineMarks(line: LimitLine): PlotMark[] {
  const { low, high } = line.tested;
  const points = Array.from({ length: 25 }, (_, index) => low + ((high - low) * index) / 24).flatMap(
    (temperature) => {
      const answer = limitAt(line, temperature);
      return answer.ok ? [answer.value] : [];
    },
  );
  const centre = points.map(({ temperature, limit }) => ({ x: temperature, y: limit }));
  return [
    {
      kind: 'band',
      points: points.map(({ temperature, low: from, high: to }) => ({ x: temperature, low: from, high: to })),
    },
    { kind: 'line', points: centre },
    ...labelled(centre[Math.floor(centre.length / 6)], 'line through the limits, with its 95 % band'),
  ];
}

function intervalMarks(points: readonly LimitPoint[]): PlotMark[] {
  if (points.length === 0) return [];
  const bars = points.map(({ temperature, limit, low, high }) => ({ x: temperature, y: limit, low, high }));
  return [
    { kind: 'intervals', along: 'y', points: bars },
    ...labelled(bars.at(-1), 'limit with its 95 % interval'),
  ];
}

function pointMarks(limits: SpeedTable['meltLimits']): PlotMark[] {
  if (limits.length === 0) return [];
  const points = limits.map(({ nozzleTemperature, value }) => ({ x: nozzleTemperature, y: value }));
  return [{ kind: 'points', marker: 'circle', points }, ...labelled(points[0], 'limit without an interval')];
}

/** The name of a mark beside one of its points. */
function labelled(at: PlotPoint | undefined, text: string): PlotMark[] {
  return at === undefined ? [] : [{ kind: 'note', at: { x: at.x, y: at.y }, text }];
}

function describedLimits(limits: SpeedTable['meltLimits'], hasLine: boolean, largest: number): string {
  const each = limits.map(({ nozzleTemperature, value, basis, ground: { interval } }) => {
    const between =
      interval === null ? '' : `, 95 % interval ${clean(interval.low)} to ${clean(interval.high)} ${unit}`;
    return `${clean(value)} ${unit} at ${nozzleTemperature} °C, ${basis}${between}`;
  });
  const line = hasLine ? ' The line and its band end where the tests end.' : '';
  return `Limits: ${each.join('; ')}. The largest flow of the table is ${largest} ${unit}.${line}`;
}
