import { abrasiveFiller } from '../consistency/abrasive-filler.ts';
import { beadShape } from '../consistency/bead-shape.ts';
import { beadsApart } from '../consistency/beads-apart.ts';
import { bedLimit } from '../consistency/bed-limit.ts';
import { chamberContradiction } from '../consistency/chamber.ts';
import { chamberLimit } from '../consistency/chamber-limit.ts';
import { claimBelowTrials } from '../consistency/claim-below-trials.ts';
import { claimedFlow } from '../consistency/claimed-flow.ts';
import { contourAboveTop } from '../consistency/contour-above-top.ts';
import { contourShare } from '../consistency/contour-share.ts';
import { designation } from '../consistency/designation.ts';
import { dryerSetting } from '../consistency/dryer-setting.ts';
import { dryerTooHot } from '../consistency/dryer-too-hot.ts';
import { familyNozzleWindow } from '../consistency/family-nozzle-window.ts';
import { filamentTemperatures } from '../consistency/filament-temperatures.ts';
import { foreignCondition } from '../consistency/foreign-condition.ts';
import { fractionsApart } from '../consistency/fractions-apart.ts';
import { gaugeAccuracy } from '../consistency/gauge-accuracy.ts';
import { hotEndLimit } from '../consistency/hot-end-limit.ts';
import { machineTemperatures } from '../consistency/machine-temperatures.ts';
import { tellingName } from '../consistency/name.ts';
import { nozzleId } from '../consistency/nozzle-id.ts';
import { oddRounding } from '../consistency/odd-rounding.ts';
import { pathsApart } from '../consistency/paths-apart.ts';
import { polymerOrder } from '../consistency/polymer-order.ts';
import { printTimeRule } from '../consistency/print-time.ts';
import { segmentLength } from '../consistency/segment-length.ts';
import { segmentsApart } from '../consistency/segments-apart.ts';
import { settingsAboveMachine } from '../consistency/settings-above-machine.ts';
import { settingsApart } from '../consistency/settings-apart.ts';
import { sourcesDisagree } from '../consistency/sources-disagree.ts';
import { spoolHolder } from '../consistency/spool-holder.ts';
import { spoolNowhere } from '../consistency/spool-nowhere.ts';
import { strandMismatch } from '../consistency/strand-mismatch.ts';
import { trialOutsideWindow } from '../consistency/trial-outside-window.ts';
import { calendarDate } from '../dates/calendar.ts';
import { futureDate } from '../dates/future.ts';
import { sourceOrder } from '../dates/source-order.ts';
import { aboveSiblings } from '../evidence/above-siblings.ts';
import { belowSiblings } from '../evidence/below-siblings.ts';
import { eventOutsideLadder } from '../evidence/event-outside-ladder.ts';
import { fallingLimit } from '../evidence/falling-limit.ts';
import { farBelowInterval } from '../evidence/far-below.ts';
import { fewSteps } from '../evidence/few-steps.ts';
import { lightSamples } from '../evidence/light-samples.ts';
import { observationsPlace } from '../evidence/observations.ts';
import { otherConditions } from '../evidence/other-conditions.ts';
import { otherDate } from '../evidence/other-date.ts';
import { readingOffTrend } from '../evidence/reading-off-trend.ts';
import { scaleDigits } from '../evidence/scale-digits.ts';
import { shortOfClaim } from '../evidence/short-of-claim.ts';
import { staleFirmware } from '../evidence/stale-firmware.ts';
import { unorderedSteps } from '../evidence/unordered-steps.ts';
import { unreducibleTrial } from '../evidence/unreducible.ts';
import { unsupportedLimit } from '../evidence/unsupported.ts';
import { valueAboveInterval } from '../evidence/value-above-interval.ts';
import { wideInterval } from '../evidence/wide-interval.ts';
import { duplicateId } from '../identity/duplicate-id.ts';
import { idPath } from '../identity/id-path.ts';
import { nearDuplicate } from '../identity/near-duplicate.ts';
import { sameProduct } from '../identity/same-product.ts';
import { bedTemperature } from '../plausibility/bed-temperature.ts';
import { chamberTemperature } from '../plausibility/chamber-temperature.ts';
import { impossibleDensity } from '../plausibility/density.ts';
import { diameterTolerance } from '../plausibility/diameter-tolerance.ts';
import { diffusivity } from '../plausibility/diffusivity.ts';
import { dryingNearMelt } from '../plausibility/drying-near-melt.ts';
import { dryingTemperature } from '../plausibility/drying-temperature.ts';
import { dryingTime } from '../plausibility/drying-time.ts';
import { heaterPower } from '../plausibility/heater-power.ts';
import { idleMeltZone } from '../plausibility/idle-melt-zone.ts';
import { impossibleFigure } from '../plausibility/impossible-figure.ts';
import { lateDecomposition } from '../plausibility/late-decomposition.ts';
import { meltZone } from '../plausibility/melt-zone.ts';
import { moistureRatio } from '../plausibility/moisture-ratio.ts';
import { notPositive } from '../plausibility/not-positive.ts';
import { nozzleTemperature } from '../plausibility/nozzle-temperature.ts';
import { price } from '../plausibility/price.ts';
import { runUp } from '../plausibility/run-up.ts';
import { shareAboveWhole } from '../plausibility/share-above-whole.ts';
import { softeningOutsideFamily } from '../plausibility/softening.ts';
import { strandDiameter } from '../plausibility/strand-diameter.ts';
import { strandFeed } from '../plausibility/strand-feed.ts';
import { timeToTopSpeed } from '../plausibility/time-to-top-speed.ts';
import { transitionRatio } from '../plausibility/transition-ratio.ts';
import { unusualDensity } from '../plausibility/unusual-density.ts';
import { unusualDrying } from '../plausibility/unusual-drying.ts';
import { unusualFigure } from '../plausibility/unusual-figure.ts';
import { unusualNozzleTemperature } from '../plausibility/unusual-nozzle-temperature.ts';
import { wideRange } from '../plausibility/wide-range.ts';
import { missingProvenance } from '../provenance/missing.ts';
import { danglingReference } from '../references/dangling.ts';
import { feedstock } from '../safety/feedstock.ts';
import { linerFumes } from '../safety/liner-fumes.ts';
import { linerNearLimit } from '../safety/liner-near-limit.ts';
import { soundAction } from '../safety/sound-action.ts';
import { soundStatement } from '../safety/sound-statement.ts';
import { unsensedChamber } from '../safety/unsensed-chamber.ts';
import { ventilation } from '../safety/ventilation.ts';
import { keyOrder } from '../style/key-order.ts';
import { unitSpelling } from '../style/unit-spelling.ts';
import type { Rule } from './rule.ts';

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
