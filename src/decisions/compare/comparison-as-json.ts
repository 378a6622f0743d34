import { tableCautions } from '../../knowledge/cautions.ts';
import { quirkFacts } from '../../knowledge/quirk-words.ts';
import { jsonInputs } from '../../tables/write/table-as-json.ts';
import { jsonText } from '../../text/json-text.ts';
import type { Money } from '../../units/canonical.ts';
import { amountOf } from '../../units/rounded.ts';
import type { ComparedEstimate, Comparison } from './comparison.ts';
import { costNames } from './hourly-costs.ts';
import type { Known } from './job-estimate.ts';

/** Version of the form of the JSON comparisons, see `schema/output/comparison.schema.json`. */
const comparisonFormat = 'meltbounds-comparison/1';

/** A comparison for programs: every quantity an object of value and unit, what is unknown null. */
export function formatComparisonAsJson(comparison: Comparison): string {
  const { job, policy, layerHeight, meltShare, jobs, hourValue, hourlyCosts, answer, estimates, origin } =
    comparison;
  const document = {
    format: comparisonFormat,
    job,
    policy,
    origin,
    layerHeight: layerHeight === null ? null : amountOf(layerHeight, 'mm'),
    meltShare: ratio(meltShare),
    jobs,
    hourValue: money(hourValue),
    hourlyCosts: Object.fromEntries(costNames.map((name) => [name, money(hourlyCosts[name] ?? null)])),
    answer,
    pairings: estimates.map(jsonEstimate),
    cautions: tableCautions,
    inputs: jsonInputs(comparison),
  };
  return jsonText(document);
}

function jsonEstimate(estimate: ComparedEstimate) {
  const { machine, nozzle, filament, timeInterval, lessMelt, saved, weakest, modelCheck, warnings } =
    estimate;
  return {
    machine,
    nozzle,
    filament,
    time: seconds(estimate.time),
    timeInterval:
      timeInterval === null ? null : { low: seconds(timeInterval.low), high: seconds(timeInterval.high) },
    lessMelt: lessMelt.map((each) => ({ share: ratio(each.share), time: seconds(each.time) })),
    saved: saved === null ? null : { time: seconds(saved.time), share: ratio(saved.share) },
    limiters: estimate.limiters.map(({ limiter, time }) => ({ limiter, time: seconds(time) })),
    features: estimate.features.map(
      ({ feature, time, limiter, commandedSpeed, peakSpeed, basis, isSimulated }) => ({
        feature,
        time: seconds(time),
        limiter,
        commandedSpeed: speed(commandedSpeed),
        peakSpeed: speed(peakSpeed),
        basis,
        isSimulated,
      }),
    ),
    betweenLayers: seconds(estimate.betweenLayers),
    printPeak: speed(estimate.printPeak),
    travelPeak: speed(estimate.travelPeak),
    topSpeed: known(estimate.topSpeed, speed),
    mass: known(estimate.mass, (value) => amountOf(value, 'g')),
    filamentCost: known(estimate.filamentCost, money),
    soundLevel: known(estimate.soundLevel, (value) => ({ value, unit: 'dB[SPL]{A}' })),
    price: known(estimate.price, money),
    priceDifference: money(estimate.priceDifference),
    runningCost: money(estimate.runningCost),
    savedHourPrice: money(estimate.savedHourPrice),
    savedHourGap: estimate.savedHourGap,
    paysAfterJobs: estimate.paysAfterJobs,
    paysGap: estimate.paysGap,
    weakest,
    modelCheck:
      modelCheck === null
        ? null
        : { prints: modelCheck.prints, largestError: ratio(modelCheck.largestError) },
    warnings,
    quirks: estimate.quirks.map(quirkFacts),
  };
}

function seconds(value: number) {
  return amountOf(value, 's');
}

function ratio(value: number) {
  return amountOf(100 * value, '%');
}

function speed(value: number | null) {
  return value === null ? null : amountOf(value, 'mm/s');
}

function money(value: Money | null) {
  return value === null ? null : amountOf(value.amount, value.currency);
}

function known<Value>(value: Known<Value> | null, write: (value: Value) => object | null) {
  return value === null
    ? null
    : { ...write(value.value), basis: value.basis, isSimulated: value.isSimulated };
}
