import type { JobFigures } from '../../decisions/compare/compare-figures.ts';
import { timeOf } from '../../decisions/compare/estimate-job.ts';
import { jobAtLayerHeight } from '../../decisions/compare/job-at-layer-height.ts';
import type { PairingFigures } from '../../decisions/compare/pairing-figures.ts';
import type { LineStyle, Plot, PlotMark } from '../../plots/plot.ts';
import { counted } from '../../text/words.ts';
import type { Fraction, Millimetres } from '../../units/canonical.ts';
import { rounded } from '../../units/rounded.ts';

/** A pairing under the name that it has on the page. */
export interface TitledFigures {
  readonly title: string;
  readonly figures: PairingFigures;
}

const styles: readonly LineStyle[] = ['solid', 'dashed', 'dotted', 'dashDotted'];

/** Shares of the melt flow limit at which times are worked out, in per cent: below a fifth times grow out of the plot. */
function sharesTo(used: Fraction): number[] {
  const first = Math.max(1, Math.min(20, Math.floor(100 * used)));
  return Array.from({ length: 101 - first }, (_, index) => first + index);
}

/** Time of a job against the share of the melt flow limit, a line a pairing; null where no layers of such a height can be. */
export function needPlot(
  job: JobFigures,
  pairings: readonly TitledFigures[],
  { layerHeight, meltShare }: { readonly layerHeight?: Millimetres; readonly meltShare: Fraction },
): Plot | null {
  const paths = layerHeight === undefined ? job.paths : changed(job, layerHeight);
  if (paths === null) return null;
  const lines = pairings.map(({ title, figures }, index): PlotMark => {
    const points = sharesTo(meltShare).flatMap((share) => {
      const time = timeOf(figures, paths, () => share / 100);
      return time === null ? [] : [{ x: share, y: rounded(time / 60) }];
    });
    return { kind: 'line', label: title, points, style: styles[index % styles.length] ?? 'solid' };
  });
  return {
    title: 'Time by share of the melt flow limit',
    description: `Time of ${job.name} on ${counted(pairings.length, 'pairing')} with each share of what the house rules let melt.`,
    x: { quantity: 'share of the melt flow limit', unit: '%' },
    y: { quantity: 'time', unit: 'min' },
    marks: [...lines, { kind: 'level', axis: 'x', at: 100 * meltShare, label: 'used above' }],
  };
}

function changed(job: JobFigures, layerHeight: Millimetres) {
  const paths = jobAtLayerHeight(job.paths, layerHeight);
  return paths.ok ? paths.value : null;
}
