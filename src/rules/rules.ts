import { aboveSiblings } from './above-siblings.ts';
import { abrasiveFiller } from './abrasive-filler.ts';
import { beadShape } from './bead-shape.ts';
import { bedLimit } from './bed-limit.ts';
import { bedTemperature } from './bed-temperature.ts';
import { calendarDate } from './calendar-date.ts';
import { chamberContradiction } from './chamber-contradiction.ts';
import { chamberTemperature } from './chamber-temperature.ts';
import { claimedFlow } from './claimed-flow.ts';
import { contourAboveTop } from './contour-above-top.ts';
import { danglingReference } from './dangling-reference.ts';
import { designation } from './designation.ts';
import { diameterTolerance } from './diameter-tolerance.ts';
import { diffusivity } from './diffusivity.ts';
import { dryerSetting } from './dryer-setting.ts';
import { dryerTooHot } from './dryer-too-hot.ts';
import { dryingTemperature } from './drying-temperature.ts';
import { duplicateId } from './duplicate-id.ts';
import { eventOutsideLadder } from './event-outside-ladder.ts';
import { fallingLimit } from './falling-limit.ts';
import { familyNozzleWindow } from './family-nozzle-window.ts';
import { farBelowInterval } from './far-below-interval.ts';
import { feedstock } from './feedstock.ts';
import { fewSteps } from './few-steps.ts';
import { foreignCondition } from './foreign-condition.ts';
import { futureDate } from './future-date.ts';
import { heaterPower } from './heater-power.ts';
import { hotEndLimit } from './hot-end-limit.ts';
import { idPath } from './id-path.ts';
import { impossibleDensity } from './impossible-density.ts';
import { impossibleFigure } from './impossible-figure.ts';
import { keyOrder } from './key-order.ts';
import { lightSamples } from './light-samples.ts';
import { linerFumes } from './liner-fumes.ts';
import { linerNearLimit } from './liner-near-limit.ts';
import { meltZone } from './melt-zone.ts';
import { missingProvenance } from './missing-provenance.ts';
import { nearDuplicate } from './near-duplicate.ts';
import { notPositive } from './not-positive.ts';
import { nozzleId } from './nozzle-id.ts';
import { nozzleTemperature } from './nozzle-temperature.ts';
import { observationsPlace } from './observations-place.ts';
import { otherConditions } from './other-conditions.ts';
import { otherDate } from './other-date.ts';
import { polymerOrder } from './polymer-order.ts';
import { readingOffTrend } from './reading-off-trend.ts';
import type { Rule } from './rule.ts';
import { runUp } from './run-up.ts';
import { sameProduct } from './same-product.ts';
import { segmentLength } from './segment-length.ts';
import { shareAboveWhole } from './share-above-whole.ts';
import { softeningOutsideFamily } from './softening-outside-family.ts';
import { soundAction } from './sound-action.ts';
import { soundStatement } from './sound-statement.ts';
import { sourceOrder } from './source-order.ts';
import { sourcesDisagree } from './sources-disagree.ts';
import { spoolHolder } from './spool-holder.ts';
import { staleFirmware } from './stale-firmware.ts';
import { strandDiameter } from './strand-diameter.ts';
import { strandFeed } from './strand-feed.ts';
import { strandMismatch } from './strand-mismatch.ts';
import { tellingName } from './telling-name.ts';
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
  eventOutsideLadder,
  fallingLimit,
  farBelowInterval,
  fewSteps,
  lightSamples,
  otherDate,
  readingOffTrend,
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
  shareAboveWhole,
  softeningOutsideFamily,
  strandDiameter,
  strandFeed,
  unusualDensity,
  unusualDrying,
  unusualFigure,
  unusualNozzleTemperature,
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
  sourcesDisagree,
  spoolHolder,
  strandMismatch,
  trialOutsideWindow,
  feedstock,
  linerFumes,
  linerNearLimit,
  soundAction,
  soundStatement,
  unsensedChamber,
  ventilation,
];
