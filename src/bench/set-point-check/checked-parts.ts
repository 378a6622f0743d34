/** The parts of a machine whose set point can be checked, with what the offset of each is called. */
export const partOffsets = {
  nozzle: 'nozzleTemperatureOffset',
  bed: 'bedTemperatureOffset',
  chamber: 'chamberTemperatureOffset',
  dryer: 'dryerTemperatureOffset',
} as const;

export type CheckedPart = keyof typeof partOffsets;

export const checkedParts = Object.keys(partOffsets) as readonly CheckedPart[];
