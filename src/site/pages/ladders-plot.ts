import type { ReductionCurve } from '../../bench/reduction.ts';
import type { Plot, PlotMark } from '../../plots/plot.ts';
import { wordsOf } from '../../text/words.ts';
import { formatNumber } from '../../units/format-quantity.ts';
import { printedUnit } from '../../units/print-symbols.ts';

/** The curve of a flow ladder at its nozzle temperature. */
interface LadderCurve {
  readonly trial: string;
  readonly nozzleTemperature: number | null;
  readonly curve: ReductionCurve;
}

const markers = ['circle', 'openSquare', 'openTriangle', 'openDiamond'] as const;
const styles = ['solid', 'dashed', 'dotted', 'dashDotted'] as const;

/** The curves of the flow ladders of a pairing over each other, with their readings; null where there are none. */
export function laddersPlot(ladders: readonly LadderCurve[], pairing: string): Plot | null {
  const [first] = ladders;
  if (first === undefined) return null;
  const { threshold } = first.curve;
  return {
    title: `${pairing}: every flow ladder`,
    description: ladders.map(describedLadder).join(' '),
    x: { quantity: wordsOf(first.curve.x.quantity), unit: printedUnit('mm3/s') },
    y: { quantity: wordsOf(first.curve.y.quantity), unit: '%' },
    marks: [
      ...ladders.flatMap(ladderMarks),
      ...(threshold === null
        ? []
        : [
            {
              kind: 'level' as const,
              axis: 'y' as const,
              at: 100 * threshold,
              label: `accepted ${number(100 * threshold)} %`,
            },
          ]),
    ],
  };
}

function ladderMarks(ladder: LadderCurve, index: number): PlotMark[] {
  const { curve } = ladder;
  const inPercent = ({ x, y }: { readonly x: number; readonly y: number }) => ({ x, y: 100 * y });
  const marker = markers[index % markers.length] ?? 'circle';
  const style = styles[index % styles.length] ?? 'solid';
  return [
    { kind: 'line', label: nameOf(ladder), points: curve.fit.map(inPercent), style },
    { kind: 'points', label: `readings, ${nameOf(ladder)}`, points: curve.readings.map(inPercent), marker },
  ];
}

function nameOf({ trial, nozzleTemperature }: LadderCurve): string {
  return nozzleTemperature === null ? trial : `${number(nozzleTemperature)} °C, ${trial}`;
}

function describedLadder({ trial, nozzleTemperature, curve: { limits } }: LadderCurve): string {
  const at = nozzleTemperature === null ? '' : ` at ${number(nozzleTemperature)} °C`;
  const [limit] = limits;
  const found =
    limit === undefined ? 'not crossed' : `crossed at ${number(limit.value)} ${printedUnit('mm3/s')}`;
  return `${trial}${at}: the accepted deficit is ${found}.`;
}

function number(value: number): string {
  return formatNumber(value, { significantDigits: 3 });
}
