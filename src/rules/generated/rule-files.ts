// Generated from the files of src/rules by `npm run generate`; do not edit.
import { rule as acknowledgementExpired } from '../acknowledgement/expired.ts';
import { rule as acknowledgementNotAllowed } from '../acknowledgement/not-allowed.ts';
import { rule as acknowledgementTooLong } from '../acknowledgement/too-long.ts';
import { rule as acknowledgementUnknownRule } from '../acknowledgement/unknown-rule.ts';
import { rule as acknowledgementUnused } from '../acknowledgement/unused.ts';
import { rule as consistencyAbrasiveFiller } from '../consistency/abrasive-filler.ts';
import { rule as consistencyBeadShape } from '../consistency/bead-shape.ts';
import { rule as consistencyBeadsApart } from '../consistency/beads-apart.ts';
import { rule as consistencyBedLimit } from '../consistency/bed-limit.ts';
import { rule as consistencyCapsApart } from '../consistency/caps-apart.ts';
import { rule as consistencyChamberContradiction } from '../consistency/chamber-contradiction.ts';
import { rule as consistencyChamberLimit } from '../consistency/chamber-limit.ts';
import { rule as consistencyClaimBelowTrials } from '../consistency/claim-below-trials.ts';
import { rule as consistencyClaimedFlow } from '../consistency/claimed-flow.ts';
import { rule as consistencyContourAboveTop } from '../consistency/contour-above-top.ts';
import { rule as consistencyContourShare } from '../consistency/contour-share.ts';
import { rule as consistencyDesignation } from '../consistency/designation.ts';
import { rule as consistencyDryerSetting } from '../consistency/dryer-setting.ts';
import { rule as consistencyDryerTooHot } from '../consistency/dryer-too-hot.ts';
import { rule as consistencyEnvelopeSides } from '../consistency/envelope-sides.ts';
import { rule as consistencyFamilyNozzleWindow } from '../consistency/family-nozzle-window.ts';
import { rule as consistencyFilamentDiameterMismatch } from '../consistency/filament-diameter-mismatch.ts';
import { rule as consistencyFilamentTemperatures } from '../consistency/filament-temperatures.ts';
import { rule as consistencyForeignCondition } from '../consistency/foreign-condition.ts';
import { rule as consistencyFractionsApart } from '../consistency/fractions-apart.ts';
import { rule as consistencyGaugeAccuracy } from '../consistency/gauge-accuracy.ts';
import { rule as consistencyHotEndLimit } from '../consistency/hot-end-limit.ts';
import { rule as consistencyJobHeight } from '../consistency/job-height.ts';
import { rule as consistencyLayerHeight } from '../consistency/layer-height.ts';
import { rule as consistencyMachineTemperatures } from '../consistency/machine-temperatures.ts';
import { rule as consistencyNameDiameter } from '../consistency/name-diameter.ts';
import { rule as consistencyNameMaterial } from '../consistency/name-material.ts';
import { rule as consistencyNozzleId } from '../consistency/nozzle-id.ts';
import { rule as consistencyOddRounding } from '../consistency/odd-rounding.ts';
import { rule as consistencyPathsApart } from '../consistency/paths-apart.ts';
import { rule as consistencyPolymerOrder } from '../consistency/polymer-order.ts';
import { rule as consistencyPrintTime } from '../consistency/print-time.ts';
import { rule as consistencySegmentLength } from '../consistency/segment-length.ts';
import { rule as consistencySegmentsApart } from '../consistency/segments-apart.ts';
import { rule as consistencySettingsAboveMachine } from '../consistency/settings-above-machine.ts';
import { rule as consistencySettingsApart } from '../consistency/settings-apart.ts';
import { rule as consistencySourcesDisagree } from '../consistency/sources-disagree.ts';
import { rule as consistencySpoolFitsNowhere } from '../consistency/spool-fits-nowhere.ts';
import { rule as consistencySpoolHolder } from '../consistency/spool-holder.ts';
import { rule as consistencyTrialOutsideWindow } from '../consistency/trial-outside-window.ts';
import { rule as datesCalendar } from '../dates/calendar.ts';
import { rule as datesFuture } from '../dates/future.ts';
import { rule as datesReadBeforeIssued } from '../dates/read-before-issued.ts';
import { rule as datesSourceOrder } from '../dates/source-order.ts';
import { rule as evidenceAboveSimilarTrials } from '../evidence/above-similar-trials.ts';
import { rule as evidenceBelowInterval } from '../evidence/below-interval.ts';
import { rule as evidenceBelowSimilarTrials } from '../evidence/below-similar-trials.ts';
import { rule as evidenceDisagreeingTrials } from '../evidence/disagreeing-trials.ts';
import { rule as evidenceEventOutsideLadder } from '../evidence/event-outside-ladder.ts';
import { rule as evidenceFallingLimit } from '../evidence/falling-limit.ts';
import { rule as evidenceFarBelowInterval } from '../evidence/far-below-interval.ts';
import { rule as evidenceFewSteps } from '../evidence/few-steps.ts';
import { rule as evidenceImpossibleDelivery } from '../evidence/impossible-delivery.ts';
import { rule as evidenceJobPrints } from '../evidence/job-prints.ts';
import { rule as evidenceLightSamples } from '../evidence/light-samples.ts';
import { rule as evidenceMisremembered } from '../evidence/misremembered.ts';
import { rule as evidenceMissingCondition } from '../evidence/missing-condition.ts';
import { rule as evidenceNotAdopted } from '../evidence/not-adopted.ts';
import { rule as evidenceObservations } from '../evidence/observations.ts';
import { rule as evidenceOtherConditions } from '../evidence/other-conditions.ts';
import { rule as evidenceOtherDate } from '../evidence/other-date.ts';
import { rule as evidenceOtherRoom } from '../evidence/other-room.ts';
import { rule as evidenceOtherTrial } from '../evidence/other-trial.ts';
import { rule as evidencePrintMass } from '../evidence/print-mass.ts';
import { rule as evidenceReadingOffTrend } from '../evidence/reading-off-trend.ts';
import { rule as evidenceReadingsChanged } from '../evidence/readings-changed.ts';
import { rule as evidenceRepeatedRows } from '../evidence/repeated-rows.ts';
import { rule as evidenceScaleDigits } from '../evidence/scale-digits.ts';
import { rule as evidenceShortOfClaim } from '../evidence/short-of-claim.ts';
import { rule as evidenceStaleFirmware } from '../evidence/stale-firmware.ts';
import { rule as evidenceUnorderedSteps } from '../evidence/unordered-steps.ts';
import { rule as evidenceUnreducible } from '../evidence/unreducible.ts';
import { rule as evidenceUnsupported } from '../evidence/unsupported.ts';
import { rule as evidenceUnusualDelivery } from '../evidence/unusual-delivery.ts';
import { rule as evidenceValueAboveInterval } from '../evidence/value-above-interval.ts';
import { rule as evidenceWideInterval } from '../evidence/wide-interval.ts';
import { rule as fileEncoding } from '../file/encoding.ts';
import { rule as fileLink } from '../file/link.ts';
import { rule as fileManyFindings } from '../file/many-findings.ts';
import { rule as fileName } from '../file/name.ts';
import { rule as fileRepository } from '../file/repository.ts';
import { rule as fileTooDeep } from '../file/too-deep.ts';
import { rule as fileTooLarge } from '../file/too-large.ts';
import { rule as fileUnreadable } from '../file/unreadable.ts';
import { rule as identityCopiedReadings } from '../identity/copied-readings.ts';
import { rule as identityDuplicateId } from '../identity/duplicate-id.ts';
import { rule as identityIdPath } from '../identity/id-path.ts';
import { rule as identityNearDuplicate } from '../identity/near-duplicate.ts';
import { rule as identitySameProduct } from '../identity/same-product.ts';
import { rule as identitySharedBatch } from '../identity/shared-batch.ts';
import { rule as plausibilityBedTemperature } from '../plausibility/bed-temperature.ts';
import { rule as plausibilityChamberTemperature } from '../plausibility/chamber-temperature.ts';
import { rule as plausibilityCopiedFigures } from '../plausibility/copied-figures.ts';
import { rule as plausibilityDensity } from '../plausibility/density.ts';
import { rule as plausibilityDiameterTolerance } from '../plausibility/diameter-tolerance.ts';
import { rule as plausibilityDiffusivity } from '../plausibility/diffusivity.ts';
import { rule as plausibilityDriveForce } from '../plausibility/drive-force.ts';
import { rule as plausibilityDryingAboveFamily } from '../plausibility/drying-above-family.ts';
import { rule as plausibilityDryingNearMelt } from '../plausibility/drying-near-melt.ts';
import { rule as plausibilityDryingNearSoftening } from '../plausibility/drying-near-softening.ts';
import { rule as plausibilityDryingTemperature } from '../plausibility/drying-temperature.ts';
import { rule as plausibilityDryingTime } from '../plausibility/drying-time.ts';
import { rule as plausibilityFanSpeed } from '../plausibility/fan-speed.ts';
import { rule as plausibilityFilamentDiameter } from '../plausibility/filament-diameter.ts';
import { rule as plausibilityFilamentFeed } from '../plausibility/filament-feed.ts';
import { rule as plausibilityFractionAboveOne } from '../plausibility/fraction-above-one.ts';
import { rule as plausibilityHeaterForFlow } from '../plausibility/heater-for-flow.ts';
import { rule as plausibilityHeaterPower } from '../plausibility/heater-power.ts';
import { rule as plausibilityHotChamber } from '../plausibility/hot-chamber.ts';
import { rule as plausibilityIdleMeltZone } from '../plausibility/idle-melt-zone.ts';
import { rule as plausibilityImpossibleFigure } from '../plausibility/impossible-figure.ts';
import { rule as plausibilityLateDecomposition } from '../plausibility/late-decomposition.ts';
import { rule as plausibilityMeltZone } from '../plausibility/melt-zone.ts';
import { rule as plausibilityMoistureRatio } from '../plausibility/moisture-ratio.ts';
import { rule as plausibilityNotPositive } from '../plausibility/not-positive.ts';
import { rule as plausibilityNozzleTemperature } from '../plausibility/nozzle-temperature.ts';
import { rule as plausibilityOtherFamily } from '../plausibility/other-family.ts';
import { rule as plausibilityPrice } from '../plausibility/price.ts';
import { rule as plausibilityRunUp } from '../plausibility/run-up.ts';
import { rule as plausibilitySoftening } from '../plausibility/softening.ts';
import { rule as plausibilitySpoolOutline } from '../plausibility/spool-outline.ts';
import { rule as plausibilityTimeToTopSpeed } from '../plausibility/time-to-top-speed.ts';
import { rule as plausibilityTransitionRatio } from '../plausibility/transition-ratio.ts';
import { rule as plausibilityUnusualBed } from '../plausibility/unusual-bed.ts';
import { rule as plausibilityUnusualDensity } from '../plausibility/unusual-density.ts';
import { rule as plausibilityUnusualDrying } from '../plausibility/unusual-drying.ts';
import { rule as plausibilityUnusualFigure } from '../plausibility/unusual-figure.ts';
import { rule as plausibilityUnusualNozzleTemperature } from '../plausibility/unusual-nozzle-temperature.ts';
import { rule as plausibilityWideRange } from '../plausibility/wide-range.ts';
import { rule as provenanceMissing } from '../provenance/missing.ts';
import { rule as provenanceNoCalculation } from '../provenance/no-calculation.ts';
import { rule as provenanceOtherMaker } from '../provenance/other-maker.ts';
import { rule as provenanceOtherProduct } from '../provenance/other-product.ts';
import { rule as provenanceOwnSheet } from '../provenance/own-sheet.ts';
import { rule as referencesDangling } from '../references/dangling.ts';
import { rule as referencesForeignNote } from '../references/foreign-note.ts';
import { rule as referencesIdleNote } from '../references/idle-note.ts';
import { rule as safetyAsleep } from '../safety/asleep.ts';
import { rule as safetyFeedstock } from '../safety/feedstock.ts';
import { rule as safetyLinerFumes } from '../safety/liner-fumes.ts';
import { rule as safetyLinerNearLimit } from '../safety/liner-near-limit.ts';
import { rule as safetySoundAction } from '../safety/sound-action.ts';
import { rule as safetySoundStatement } from '../safety/sound-statement.ts';
import { rule as safetyUnsensedChamber } from '../safety/unsensed-chamber.ts';
import { rule as safetyVentilation } from '../safety/ventilation.ts';
import { rule as shapeDateForm } from '../shape/date-form.ts';
import { rule as shapeMissingKey } from '../shape/missing-key.ts';
import { rule as shapeNotAChoice } from '../shape/not-a-choice.ts';
import { rule as shapeSize } from '../shape/size.ts';
import { rule as shapeTextForm } from '../shape/text-form.ts';
import { rule as shapeUnknownKey } from '../shape/unknown-key.ts';
import { rule as shapeWrongType } from '../shape/wrong-type.ts';
import { rule as styleBareDate } from '../style/bare-date.ts';
import { rule as styleKeyOrder } from '../style/key-order.ts';
import { rule as styleUnitSpelling } from '../style/unit-spelling.ts';
import { rule as syntaxAlias } from '../syntax/alias.ts';
import { rule as syntaxDepth } from '../syntax/depth.ts';
import { rule as syntaxDuplicateKey } from '../syntax/duplicate-key.ts';
import { rule as syntaxEmpty } from '../syntax/empty.ts';
import { rule as syntaxYaml } from '../syntax/yaml.ts';
import { rule as unitsBareNumber } from '../units/bare-number.ts';
import { rule as unitsBelowAbsoluteZero } from '../units/below-absolute-zero.ts';
import { rule as unitsEndlessNumber } from '../units/endless-number.ts';
import { rule as unitsMissingUnit } from '../units/missing-unit.ts';
import { rule as unitsNotANumber } from '../units/not-a-number.ts';
import { rule as unitsNotText } from '../units/not-text.ts';
import { rule as unitsNumberForm } from '../units/number-form.ts';
import { rule as unitsRangeExpected } from '../units/range-expected.ts';
import { rule as unitsRangeReversed } from '../units/range-reversed.ts';
import { rule as unitsSingleExpected } from '../units/single-expected.ts';
import { rule as unitsUnknownUnit } from '../units/unknown-unit.ts';
import { rule as unitsWrongDimension } from '../units/wrong-dimension.ts';
import type { RuleFile } from '../engine/rule.ts';

/** Every rule by its code. */
export const ruleFiles = {
  'acknowledgement/expired': acknowledgementExpired,
  'acknowledgement/not-allowed': acknowledgementNotAllowed,
  'acknowledgement/too-long': acknowledgementTooLong,
  'acknowledgement/unknown-rule': acknowledgementUnknownRule,
  'acknowledgement/unused': acknowledgementUnused,
  'consistency/abrasive-filler': consistencyAbrasiveFiller,
  'consistency/bead-shape': consistencyBeadShape,
  'consistency/beads-apart': consistencyBeadsApart,
  'consistency/bed-limit': consistencyBedLimit,
  'consistency/caps-apart': consistencyCapsApart,
  'consistency/chamber-contradiction': consistencyChamberContradiction,
  'consistency/chamber-limit': consistencyChamberLimit,
  'consistency/claim-below-trials': consistencyClaimBelowTrials,
  'consistency/claimed-flow': consistencyClaimedFlow,
  'consistency/contour-above-top': consistencyContourAboveTop,
  'consistency/contour-share': consistencyContourShare,
  'consistency/designation': consistencyDesignation,
  'consistency/dryer-setting': consistencyDryerSetting,
  'consistency/dryer-too-hot': consistencyDryerTooHot,
  'consistency/envelope-sides': consistencyEnvelopeSides,
  'consistency/family-nozzle-window': consistencyFamilyNozzleWindow,
  'consistency/filament-diameter-mismatch': consistencyFilamentDiameterMismatch,
  'consistency/filament-temperatures': consistencyFilamentTemperatures,
  'consistency/foreign-condition': consistencyForeignCondition,
  'consistency/fractions-apart': consistencyFractionsApart,
  'consistency/gauge-accuracy': consistencyGaugeAccuracy,
  'consistency/hot-end-limit': consistencyHotEndLimit,
  'consistency/job-height': consistencyJobHeight,
  'consistency/layer-height': consistencyLayerHeight,
  'consistency/machine-temperatures': consistencyMachineTemperatures,
  'consistency/name-diameter': consistencyNameDiameter,
  'consistency/name-material': consistencyNameMaterial,
  'consistency/nozzle-id': consistencyNozzleId,
  'consistency/odd-rounding': consistencyOddRounding,
  'consistency/paths-apart': consistencyPathsApart,
  'consistency/polymer-order': consistencyPolymerOrder,
  'consistency/print-time': consistencyPrintTime,
  'consistency/segment-length': consistencySegmentLength,
  'consistency/segments-apart': consistencySegmentsApart,
  'consistency/settings-above-machine': consistencySettingsAboveMachine,
  'consistency/settings-apart': consistencySettingsApart,
  'consistency/sources-disagree': consistencySourcesDisagree,
  'consistency/spool-fits-nowhere': consistencySpoolFitsNowhere,
  'consistency/spool-holder': consistencySpoolHolder,
  'consistency/trial-outside-window': consistencyTrialOutsideWindow,
  'dates/calendar': datesCalendar,
  'dates/future': datesFuture,
  'dates/read-before-issued': datesReadBeforeIssued,
  'dates/source-order': datesSourceOrder,
  'evidence/above-similar-trials': evidenceAboveSimilarTrials,
  'evidence/below-interval': evidenceBelowInterval,
  'evidence/below-similar-trials': evidenceBelowSimilarTrials,
  'evidence/disagreeing-trials': evidenceDisagreeingTrials,
  'evidence/event-outside-ladder': evidenceEventOutsideLadder,
  'evidence/falling-limit': evidenceFallingLimit,
  'evidence/far-below-interval': evidenceFarBelowInterval,
  'evidence/few-steps': evidenceFewSteps,
  'evidence/impossible-delivery': evidenceImpossibleDelivery,
  'evidence/job-prints': evidenceJobPrints,
  'evidence/light-samples': evidenceLightSamples,
  'evidence/misremembered': evidenceMisremembered,
  'evidence/missing-condition': evidenceMissingCondition,
  'evidence/not-adopted': evidenceNotAdopted,
  'evidence/observations': evidenceObservations,
  'evidence/other-conditions': evidenceOtherConditions,
  'evidence/other-date': evidenceOtherDate,
  'evidence/other-room': evidenceOtherRoom,
  'evidence/other-trial': evidenceOtherTrial,
  'evidence/print-mass': evidencePrintMass,
  'evidence/reading-off-trend': evidenceReadingOffTrend,
  'evidence/readings-changed': evidenceReadingsChanged,
  'evidence/repeated-rows': evidenceRepeatedRows,
  'evidence/scale-digits': evidenceScaleDigits,
  'evidence/short-of-claim': evidenceShortOfClaim,
  'evidence/stale-firmware': evidenceStaleFirmware,
  'evidence/unordered-steps': evidenceUnorderedSteps,
  'evidence/unreducible': evidenceUnreducible,
  'evidence/unsupported': evidenceUnsupported,
  'evidence/unusual-delivery': evidenceUnusualDelivery,
  'evidence/value-above-interval': evidenceValueAboveInterval,
  'evidence/wide-interval': evidenceWideInterval,
  'file/encoding': fileEncoding,
  'file/link': fileLink,
  'file/many-findings': fileManyFindings,
  'file/name': fileName,
  'file/repository': fileRepository,
  'file/too-deep': fileTooDeep,
  'file/too-large': fileTooLarge,
  'file/unreadable': fileUnreadable,
  'identity/copied-readings': identityCopiedReadings,
  'identity/duplicate-id': identityDuplicateId,
  'identity/id-path': identityIdPath,
  'identity/near-duplicate': identityNearDuplicate,
  'identity/same-product': identitySameProduct,
  'identity/shared-batch': identitySharedBatch,
  'plausibility/bed-temperature': plausibilityBedTemperature,
  'plausibility/chamber-temperature': plausibilityChamberTemperature,
  'plausibility/copied-figures': plausibilityCopiedFigures,
  'plausibility/density': plausibilityDensity,
  'plausibility/diameter-tolerance': plausibilityDiameterTolerance,
  'plausibility/diffusivity': plausibilityDiffusivity,
  'plausibility/drive-force': plausibilityDriveForce,
  'plausibility/drying-above-family': plausibilityDryingAboveFamily,
  'plausibility/drying-near-melt': plausibilityDryingNearMelt,
  'plausibility/drying-near-softening': plausibilityDryingNearSoftening,
  'plausibility/drying-temperature': plausibilityDryingTemperature,
  'plausibility/drying-time': plausibilityDryingTime,
  'plausibility/fan-speed': plausibilityFanSpeed,
  'plausibility/filament-diameter': plausibilityFilamentDiameter,
  'plausibility/filament-feed': plausibilityFilamentFeed,
  'plausibility/fraction-above-one': plausibilityFractionAboveOne,
  'plausibility/heater-for-flow': plausibilityHeaterForFlow,
  'plausibility/heater-power': plausibilityHeaterPower,
  'plausibility/hot-chamber': plausibilityHotChamber,
  'plausibility/idle-melt-zone': plausibilityIdleMeltZone,
  'plausibility/impossible-figure': plausibilityImpossibleFigure,
  'plausibility/late-decomposition': plausibilityLateDecomposition,
  'plausibility/melt-zone': plausibilityMeltZone,
  'plausibility/moisture-ratio': plausibilityMoistureRatio,
  'plausibility/not-positive': plausibilityNotPositive,
  'plausibility/nozzle-temperature': plausibilityNozzleTemperature,
  'plausibility/other-family': plausibilityOtherFamily,
  'plausibility/price': plausibilityPrice,
  'plausibility/run-up': plausibilityRunUp,
  'plausibility/softening': plausibilitySoftening,
  'plausibility/spool-outline': plausibilitySpoolOutline,
  'plausibility/time-to-top-speed': plausibilityTimeToTopSpeed,
  'plausibility/transition-ratio': plausibilityTransitionRatio,
  'plausibility/unusual-bed': plausibilityUnusualBed,
  'plausibility/unusual-density': plausibilityUnusualDensity,
  'plausibility/unusual-drying': plausibilityUnusualDrying,
  'plausibility/unusual-figure': plausibilityUnusualFigure,
  'plausibility/unusual-nozzle-temperature': plausibilityUnusualNozzleTemperature,
  'plausibility/wide-range': plausibilityWideRange,
  'provenance/missing': provenanceMissing,
  'provenance/no-calculation': provenanceNoCalculation,
  'provenance/other-maker': provenanceOtherMaker,
  'provenance/other-product': provenanceOtherProduct,
  'provenance/own-sheet': provenanceOwnSheet,
  'references/dangling': referencesDangling,
  'references/foreign-note': referencesForeignNote,
  'references/idle-note': referencesIdleNote,
  'safety/asleep': safetyAsleep,
  'safety/feedstock': safetyFeedstock,
  'safety/liner-fumes': safetyLinerFumes,
  'safety/liner-near-limit': safetyLinerNearLimit,
  'safety/sound-action': safetySoundAction,
  'safety/sound-statement': safetySoundStatement,
  'safety/unsensed-chamber': safetyUnsensedChamber,
  'safety/ventilation': safetyVentilation,
  'shape/date-form': shapeDateForm,
  'shape/missing-key': shapeMissingKey,
  'shape/not-a-choice': shapeNotAChoice,
  'shape/size': shapeSize,
  'shape/text-form': shapeTextForm,
  'shape/unknown-key': shapeUnknownKey,
  'shape/wrong-type': shapeWrongType,
  'style/bare-date': styleBareDate,
  'style/key-order': styleKeyOrder,
  'style/unit-spelling': styleUnitSpelling,
  'syntax/alias': syntaxAlias,
  'syntax/depth': syntaxDepth,
  'syntax/duplicate-key': syntaxDuplicateKey,
  'syntax/empty': syntaxEmpty,
  'syntax/yaml': syntaxYaml,
  'units/bare-number': unitsBareNumber,
  'units/below-absolute-zero': unitsBelowAbsoluteZero,
  'units/endless-number': unitsEndlessNumber,
  'units/missing-unit': unitsMissingUnit,
  'units/not-a-number': unitsNotANumber,
  'units/not-text': unitsNotText,
  'units/number-form': unitsNumberForm,
  'units/range-expected': unitsRangeExpected,
  'units/range-reversed': unitsRangeReversed,
  'units/single-expected': unitsSingleExpected,
  'units/unknown-unit': unitsUnknownUnit,
  'units/wrong-dimension': unitsWrongDimension,
} satisfies Readonly<Record<string, RuleFile>>;

/** Every code that a finding of `check` can carry. */
export type RuleCode = keyof typeof ruleFiles;
