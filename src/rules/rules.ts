import { aboveSiblings } from './above-siblings.ts';
import { abrasiveFiller } from './abrasive-filler.ts';
import { beadShape } from './bead-shape.ts';
import { beadsApart } from './beads-apart.ts';
import { bedLimit } from './bed-limit.ts';
import { bedTemperature } from './bed-temperature.ts';
import { belowSiblings } from './below-siblings.ts';
import { calendarDate } from './calendar-date.ts';
import { chamberContradiction } from './chamber-contradiction.ts';
import { chamberLimit } from './chamber-limit.ts';
import { chamberTemperature } from './chamber-temperature.ts';
import { claimBelowTrials } from './claim-below-trials.ts';
import { claimedFlow } from './claimed-flow.ts';
import { contourAboveTop } from './contour-above-top.ts';
import { contourShare } from './contour-share.ts';
import { danglingReference } from './dangling-reference.ts';
import { designation } from './designation.ts';
import { diameterTolerance } from './diameter-tolerance.ts';
import { diffusivity } from './diffusivity.ts';
import { dryerSetting } from './dryer-setting.ts';
import { dryerTooHot } from './dryer-too-hot.ts';
import { dryingNearMelt } from './drying-near-melt.ts';
import { dryingTemperature } from './drying-temperature.ts';
import { dryingTime } from './drying-time.ts';
import { duplicateId } from './duplicate-id.ts';
import { eventOutsideLadder } from './event-outside-ladder.ts';
import { fallingLimit } from './falling-limit.ts';
import { familyNozzleWindow } from './family-nozzle-window.ts';
import { farBelowInterval } from './far-below-interval.ts';
import { feedstock } from './feedstock.ts';
import { fewSteps } from './few-steps.ts';
import { filamentTemperatures } from './filament-temperatures.ts';
import { foreignCondition } from './foreign-condition.ts';
import { fractionsApart } from './fractions-apart.ts';
import { futureDate } from './future-date.ts';
import { gaugeAccuracy } from './gauge-accuracy.ts';
import { heaterPower } from './heater-power.ts';
import { hotEndLimit } from './hot-end-limit.ts';
import { idPath } from './id-path.ts';
import { idleMeltZone } from './idle-melt-zone.ts';
import { impossibleDensity } from './impossible-density.ts';
import { impossibleFigure } from './impossible-figure.ts';
import { keyOrder } from './key-order.ts';
import { lateDecomposition } from './late-decomposition.ts';
import { lightSamples } from './light-samples.ts';
import { linerFumes } from './liner-fumes.ts';
import { linerNearLimit } from './liner-near-limit.ts';
import { machineTemperatures } from './machine-temperatures.ts';
import { meltZone } from './melt-zone.ts';
import { missingProvenance } from './missing-provenance.ts';
import { moistureRatio } from './moisture-ratio.ts';
import { nearDuplicate } from './near-duplicate.ts';
import { notPositive } from './not-positive.ts';
import { nozzleId } from './nozzle-id.ts';
import { nozzleTemperature } from './nozzle-temperature.ts';
import { observationsPlace } from './observations-place.ts';
import { oddRounding } from './odd-rounding.ts';
import { otherConditions } from './other-conditions.ts';
import { otherDate } from './other-date.ts';
import { pathsApart } from './paths-apart.ts';
import { polymerOrder } from './polymer-order.ts';
import { price } from './price.ts';
import { printTimeRule } from './print-time.ts';
import { readingOffTrend } from './reading-off-trend.ts';
import type { Rule } from './rule.ts';
import { runUp } from './run-up.ts';
import { sameProduct } from './same-product.ts';
import { scaleDigits } from './scale-digits.ts';
import { segmentLength } from './segment-length.ts';
import { segmentsApart } from './segments-apart.ts';
import { settingsAboveMachine } from './settings-above-machine.ts';
import { settingsApart } from './settings-apart.ts';
import { shareAboveWhole } from './share-above-whole.ts';
import { shortOfClaim } from './short-of-claim.ts';
import { softeningOutsideFamily } from './softening-outside-family.ts';
import { soundAction } from './sound-action.ts';
import { soundStatement } from './sound-statement.ts';
import { sourceOrder } from './source-order.ts';
import { sourcesDisagree } from './sources-disagree.ts';
import { spoolHolder } from './spool-holder.ts';
import { spoolNowhere } from './spool-nowhere.ts';
import { staleFirmware } from './stale-firmware.ts';
import { strandDiameter } from './strand-diameter.ts';
import { strandFeed } from './strand-feed.ts';
import { strandMismatch } from './strand-mismatch.ts';
import { tellingName } from './telling-name.ts';
import { timeToTopSpeed } from './time-to-top-speed.ts';
import { transitionRatio } from './transition-ratio.ts';
import { trialOutsideWindow } from './trial-outside-window.ts';
import { unitSpelling } from './unit-spelling.ts';
import { unorderedSteps } from './unordered-steps.ts';
import { unreducibleTrial } from './unreducible-trial.ts';
import { unsensedChamber } from './unsensed-chamber.ts';
import { unsupportedLimit } from './unsupported-limit.ts';
import { unusualDensity } from './unusual-density.ts';
import { unusualDrying } from './unusual-drying.ts';
import { unusualFigure } from './unusual-figure.ts';
import { unusualNozzleTemperature } from './unusual-nozzle-temperature.ts';
import { valueAboveInterval } from './value-above-interval.ts';
import { ventilation } from './ventilation.ts';
import { wideInterval } from './wide-interval.ts';
import { wideRange } from './wide-range.ts';

/** Every rule that judges what the schema has accepted. */
export const rules: readonly Rule[] = [
  idPath,
  duplicateId,
  danglingReference,
  missingProvenance,
  futureDate,
  observationsPlace,
  unreducibleTrial,
  unsupportedLimit,
  otherConditions,
  unitSpelling,
  keyOrder,
  nearDuplicate,
  sameProduct,
  calendarDate,
  sourceOrder,
  aboveSiblings,
  belowSiblings,
  shortOfClaim,
  eventOutsideLadder,
  fallingLimit,
  farBelowInterval,
  fewSteps,
  lightSamples,
  otherDate,
  readingOffTrend,
  scaleDigits,
  staleFirmware,
  unorderedSteps,
  valueAboveInterval,
  wideInterval,
  bedTemperature,
  chamberTemperature,
  impossibleDensity,
  diameterTolerance,
  diffusivity,
  dryingTemperature,
  heaterPower,
  impossibleFigure,
  meltZone,
  notPositive,
  nozzleTemperature,
  runUp,
  timeToTopSpeed,
  price,
  shareAboveWhole,
  softeningOutsideFamily,
  strandDiameter,
  strandFeed,
  unusualDensity,
  unusualDrying,
  unusualFigure,
  unusualNozzleTemperature,
  idleMeltZone,
  wideRange,
  transitionRatio,
  lateDecomposition,
  dryingNearMelt,
  moistureRatio,
  dryingTime,
  abrasiveFiller,
  beadShape,
  bedLimit,
  chamberContradiction,
  claimedFlow,
  contourAboveTop,
  designation,
  dryerSetting,
  dryerTooHot,
  familyNozzleWindow,
  foreignCondition,
  hotEndLimit,
  tellingName,
  nozzleId,
  polymerOrder,
  segmentLength,
  printTimeRule,
  sourcesDisagree,
  spoolHolder,
  strandMismatch,
  trialOutsideWindow,
  machineTemperatures,
  filamentTemperatures,
  spoolNowhere,
  segmentsApart,
  pathsApart,
  beadsApart,
  fractionsApart,
  oddRounding,
  claimBelowTrials,
  settingsAboveMachine,
  settingsApart,
  gaugeAccuracy,
  contourShare,
  chamberLimit,
  feedstock,
  linerFumes,
  linerNearLimit,
  soundAction,
  soundStatement,
  unsensedChamber,
  ventilation,
];
