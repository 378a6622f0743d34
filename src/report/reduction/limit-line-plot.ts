import type { LimitLine } from '../../bench/limit-line/limit-line.ts';
import { type LimitAnswer, limitAt } from '../../bench/limit-line/limit-line-answers.ts';
import type { PairingReduction } from '../../bench/limit-line/pairing-reduction.ts';
import type { Plot, PlotMark } from '../../plots/plot.ts';
import { figureQuantity, figureScale, figureUnit } from './printed-quantity.ts';

const samples = 60;

/** The picture of limits against the nozzle temperature: trials, line with band, bounds, and what was asked for. */
export function limitLinePlot(pairing: PairingReduction, answers: readonly LimitAnswer[]): Plot {
  const { line, limits, bounds, filament, machine, nozzle } = pairing;
  const asked = answers.map(({ temperature }) => temperature);
  return {
    title: `${filament} on ${machine}, nozzle ${nozzle}`,
    description: description(pairing, answers),
    x: { quantity: 'nozzle temperature', unit: figureUnit(figureScale('temperature')) },
    y: { quantity: 'melt flow limit', unit: figureUnit(figureScale('volumeFlow')) },
    marks: [
      ...(line === null ? [] : lineMarks(line, asked)),
      ...(limits.length === 0
        ? []
        : [
            {
              kind: 'intervals',
              label: 'limit of a ladder with its 95 % interval',
              along: 'y',
              marker: 'circle',
              points: limits.map(({ temperature, limit, low, high }) => ({
                x: temperature,
                y: limit,
                low,
                high,
              })),
            } as const,
          ]),
      ...boundMarks(bounds),
      ...answerMarks(answers),
    ],
  };
}

function lineMarks(line: LimitLine, asked: readonly number[]): PlotMark[] {
  const { low, high } = line.tested;
  const inside = answersBetween(line, low, high);
  const marks: PlotMark[] = [
    {
      kind: 'band',
      label: '95 % band of the line',
      points: inside.map((answer) => ({ x: answer.temperature, low: answer.low, high: answer.high })),
    },
    {
      kind: 'line',
      label: 'line',
      points: inside.map(({ temperature, limit }) => ({ x: temperature, y: limit })),
    },
  ];
  const beyond = [
    [Math.min(low, ...asked), low],
    [high, Math.max(high, ...asked)],
  ] as const;
  for (const [from, to] of beyond) {
    if (from === to) continue;
    const outside = answersBetween(line, from, to);
    for (const end of ['limit', 'low', 'high'] as const) {
      marks.push({
        kind: 'line',
        style: end === 'limit' ? 'dashed' : 'dotted',
        ...(end === 'limit' && { label: 'extrapolated, not tested' }),
        points: outside.map((answer) => ({ x: answer.temperature, y: answer[end] })),
      });
    }
  }
  return marks;
}

function answersBetween(line: LimitLine, from: number, to: number): LimitAnswer[] {
  return Array.from({ length: samples + 1 }, (_, index) => from + ((to - from) * index) / samples).flatMap(
    (temperature) => {
      const answer = limitAt(line, temperature, { extrapolate: true });
      return answer.ok ? [answer.value] : [];
    },
  );
}

function boundMarks(bounds: PairingReduction['bounds']): PlotMark[] {
  return (['above', 'below'] as const).flatMap((side): PlotMark[] => {
    const points = bounds
      .filter(({ censored }) => censored === side)
      .map(({ temperature, bound }) => ({ x: temperature, y: bound }));
    if (points.length === 0) return [];
    const [label, towards] = side === 'above' ? (['at least', 'up'] as const) : (['below', 'down'] as const);
    return [{ kind: 'bounds', label: `${label}, not fitted`, towards, marker: 'openSquare', points }];
  });
}

function answerMarks(answers: readonly LimitAnswer[]): PlotMark[] {
  if (answers.length === 0) return [];
  return [
    {
      kind: 'intervals',
      label: 'asked for',
      along: 'y',
      marker: 'diamond',
      points: answers.map(({ temperature, limit, low, high }) => ({ x: temperature, y: limit, low, high })),
    },
  ];
}

function description({ limits, bounds, line }: PairingReduction, answers: readonly LimitAnswer[]): string {
  const place = ({ temperature, limit }: { temperature: number; limit: number }) =>
    `${figureQuantity(limit, figureScale('volumeFlow'))} at ${figureQuantity(temperature, figureScale('temperature'))}`;
  return [
    `Melt flow limits of ${limits.length} ladders: ${limits.map(place).join(', ') || 'none'}.`,
    ...(bounds.length === 0 ? [] : [`${bounds.length} bounds are shown and not fitted.`]),
    ...(line === null ? [] : ['A straight line with its 95 % band runs through them.']),
    ...(answers.length === 0 ? [] : [`Asked for: ${answers.map(place).join(', ')}.`]),
  ].join(' ');
}
