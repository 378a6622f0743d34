export { type Abrasion, abrasion, abrasionOfNozzle } from '../physics/abrasion.ts';
export { beadArea, flowAtSpeed, isBeadFeasible, speedAtFlow } from '../physics/bead.ts';
export { type Corner, cornerRadius, cornerSpeed } from '../physics/corner.ts';
export {
  cylinderCentreTheta,
  cylinderMeanTheta,
  fourierForCentreTheta,
} from '../physics/cylinder-conduction.ts';
export {
  filamentArea,
  filamentFeed,
  filamentLength,
  filamentMass,
  flowOfFeed,
  spoolDuration,
} from '../physics/filament-geometry.ts';
export {
  type Heating,
  heatPerVolume,
  meanSpecificHeat,
  meltPower,
  type TransitionHeat,
} from '../physics/melt-power.ts';
export { viscosityRatio } from '../physics/melt-viscosity.ts';
export {
  coreTemperatureAtFlow,
  flowAtCoreTemperature,
  type MeltZone,
  meanTemperatureAtFlow,
  thermalDiffusivity,
} from '../physics/melt-zone.ts';
export {
  densityOfFilledGrade,
  densityOfMixture,
  fillerMassFractionAtDensity,
  type MixturePart,
} from '../physics/mixture.ts';
export {
  lengthToTouchSpeed,
  moveDuration,
  peakSpeedOfMove,
  runUpLength,
  speedAtLayerTime,
} from '../physics/motion.ts';
export {
  bucklingPressure,
  channelFlow,
  channelPressureDrop,
  conePressureDrop,
  pushingForce,
  wallShearRate,
} from '../physics/nozzle-pressure.ts';
export { type PlasticsDesignation, parsePlasticsDesignation } from '../physics/plastics-designation.ts';
export {
  type PathTime,
  type PrintPath,
  type PrintPlan,
  type PrintTime,
  printTime,
} from '../physics/print-time.ts';
export {
  backgroundCorrection,
  dailyExposureLevel,
  levelAtOtherDistance,
  meanOfLevels,
  powerLevelFromPressure,
  pressureLevelAtDistance,
  roomCorrection,
  type SoundField,
  sumOfLevels,
} from '../physics/sound.ts';
export { type SpeedProfile, type StraightMove, speedProfile } from '../physics/speed-profile.ts';
