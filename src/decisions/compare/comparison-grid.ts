import { features } from '../../knowledge/feature.ts';
import { basisWords } from '../../knowledge/origin.ts';
import { counted, enumerated, wordsOf } from '../../text/words.ts';
import type { MillimetresPerSecond, Money } from '../../units/canonical.ts';
import { formatNumber, formatQuantity } from '../../units/format-quantity.ts';
import type { ComparedEstimate, Comparison } from './comparison.ts';
import {
  durationText,
  featureTexts,
  intervalText,
  limiterTexts,
  percent,
  savingText,
} from './format-duration.ts';
import { costNames, currenciesOf, gapText, type NoFigure } from './hourly-costs.ts';
import type { Known } from './job-estimate.ts';
import { limiterWords } from './limiter-words.ts';

/** A block of a comparison: a heading, and a row a figure with one cell a pairing. */
interface ComparisonBlock {
  readonly heading: string;
  readonly rows: readonly (readonly [label: string, ...cells: string[]])[];
}

const unknown = 'unknown';
const none = '-';

/** What a comparison shows, block by block, for every form that people read. */
export function comparisonBlocks(comparison: Comparison): ComparisonBlock[] {
  const { estimates } = comparison;
  const row = (label: string, cell: (estimate: ComparedEstimate) => string): [string, ...string[]] => [
    label,
    ...estimates.map(cell),
  ];
  return [
    { heading: 'pairing', rows: summaryRows(comparison, row) },
    { heading: 'time with less melt flow', rows: lessMeltRows(estimates, row) },
    { heading: 'time limited by', rows: limiterRows(estimates, row) },
    { heading: 'time by feature, limited by', rows: featureTimeRows(estimates, row) },
    { heading: 'peak reached, of commanded', rows: featureRows(estimates, row, peakCell) },
  ];
}

type Row = (
  label: string,
  cell: (estimate: ComparedEstimate) => string,
) => readonly [label: string, ...cells: string[]];

function summaryRows(
  { jobs, hourValue, hourlyCosts, estimates: [first] }: Comparison,
  row: Row,
): ComparisonBlock['rows'] {
  return [
    row('time', ({ time }) => durationText(time)),
    row('over the melt interval', ({ time, timeInterval }) => intervalText(timeInterval, time)),
    row('saved', (estimate) =>
      estimate.saved === null || first === undefined
        ? none
        : `${savingText(first, estimate)} (${percent(estimate.saved.share)})`,
    ),
    row('peak, printing', ({ printPeak }) => speedText(printPeak)),
    row('peak, travel', ({ travelPeak }) => speedText(travelPeak)),
    row('top speed', ({ topSpeed }) => knownText(topSpeed, speedText)),
    row('filament', ({ mass }) => knownText(mass, (value) => formatQuantity(value, 'mass', { decimals: 1 }))),
    row('filament cost', ({ filamentCost }) => knownText(filamentCost, moneyText)),
    ...(currenciesOf(hourlyCosts).length === 0
      ? []
      : [
          row(enumerated(costNames.filter((name) => hourlyCosts[name] !== undefined)), ({ runningCost }) =>
            runningCost === null ? none : moneyText(runningCost),
          ),
        ]),
    row('sound level', ({ soundLevel }) =>
      knownText(soundLevel, (value) => `${formatNumber(value, { decimals: 0 })} dB(A)`),
    ),
    row('machine price', ({ price }) => knownText(price, moneyText)),
    ...(jobs === null
      ? []
      : [
          row(`a saved hour, over ${jobs} jobs`, ({ savedHourPrice, savedHourGap, price }) =>
            figureText(savedHourPrice === null ? null : moneyText(savedHourPrice), savedHourGap, price),
          ),
        ]),
    ...(hourValue === null && currenciesOf(hourlyCosts).length === 0
      ? []
      : [
          row(
            hourValue === null ? 'pays' : `pays, an hour at ${moneyText(hourValue)}`,
            ({ paysAfterJobs, paysGap, price }) =>
              figureText(
                paysAfterJobs === null ? null : `after ${counted(paysAfterJobs, 'job')}`,
                paysGap,
                price,
              ),
          ),
        ]),
    row(
      'weakest number',
      ({ weakest }) => `${basisWords(weakest.basis, weakest.isSimulated)}: ${wordsOf(weakest.of)}`,
    ),
    row('time model checked', ({ modelCheck }) =>
      modelCheck === null
        ? 'never on this machine'
        : `within ${formatNumber(100 * modelCheck.largestError, { decimals: 1 })} % of ${counted(modelCheck.prints, 'print')}`,
    ),
  ];
}

/** One row a share of the melt flow limits that is smaller than the one that is used. */
function lessMeltRows(estimates: readonly ComparedEstimate[], row: Row): ComparisonBlock['rows'] {
  const shares = new Set(estimates.flatMap(({ lessMelt }) => lessMelt.map(({ share }) => share)));
  return [...shares].map((share) =>
    row(`${percent(share)} of the limit`, (estimate) => {
      const slower = estimate.lessMelt.find((each) => each.share === share);
      return slower === undefined
        ? none
        : `${durationText(slower.time)} (+${percent(slower.time / estimate.time - 1)})`;
    }),
  );
}

/** One row a limiter, in the order of the first pairing that spends time under it. */
function limiterRows(estimates: readonly ComparedEstimate[], row: Row): ComparisonBlock['rows'] {
  const names = new Set(estimates.flatMap(({ limiters }) => limiters.map(({ limiter }) => limiter)));
  return [...names].map((name) =>
    row(limiterWords[name], (estimate) => {
      const spent = limiterTexts(estimate).get(name);
      return spent === undefined ? none : `${spent.time} (${spent.share})`;
    }),
  );
}

type FeatureTime = ComparedEstimate['features'][number];

function featureRows(
  estimates: readonly ComparedEstimate[],
  row: Row,
  cell: (time: FeatureTime, estimate: ComparedEstimate) => string,
): ComparisonBlock['rows'] {
  const asked = features.filter((name) =>
    estimates.some(({ features: times }) => times.some(({ feature }) => feature === name)),
  );
  return asked.map((name) =>
    row(wordsOf(name), (estimate) => {
      const found = estimate.features.find(({ feature }) => feature === name);
      return found === undefined ? none : cell(found, estimate);
    }),
  );
}

/** Times of the features, and of what lies between the layers, so that all add up. */
function featureTimeRows(estimates: readonly ComparedEstimate[], row: Row): ComparisonBlock['rows'] {
  return [
    ...featureRows(
      estimates,
      row,
      ({ feature, limiter }, estimate) =>
        `${featureTexts(estimate).features.get(feature)}, ${limiterWords[limiter]}`,
    ),
    row('between layers', (estimate) => featureTexts(estimate).betweenLayers),
  ];
}

function peakCell({ peakSpeed, commandedSpeed }: FeatureTime): string {
  return `${formatNumber(peakSpeed, { decimals: 0 })} of ${speedText(commandedSpeed)}`;
}

function speedText(value: MillimetresPerSecond | null): string {
  return value === null ? none : `${formatNumber(value, { decimals: 0 })} mm/s`;
}

function moneyText({ amount, currency }: Money): string {
  return `${formatNumber(amount, { decimals: Math.abs(amount) < 100 ? 2 : 0 })} ${currency}`;
}

/** A figure of money, or why there is none; what was not asked of a pairing is a dash. */
function figureText(figure: string | null, gap: NoFigure | null, price: Known<Money> | null): string {
  if (figure !== null) return figure;
  return gap === null ? none : gapText(gap, price?.value.currency ?? null);
}

function knownText<Value>(known: Known<Value> | null, text: (value: Value) => string): string {
  return known === null ? unknown : `${text(known.value)} ${basisWords(known.basis, known.isSimulated)}`;
}
