import type { Machine, Statement } from '../registry/generated/documents.ts';
import { type Conditions, chooseStatement } from '../registry/statement.ts';
import type { DegreesCelsius, Kelvins } from '../units/canonical.ts';
import { rounded } from '../units/rounded.ts';
import { shown } from '../units/wording.ts';

/** The parts of a machine whose set point can be checked, with what the offset of each is called. */
export const partOffsets = {
  nozzle: 'nozzleTemperatureOffset',
  bed: 'bedTemperatureOffset',
  chamber: 'chamberTemperatureOffset',
  dryer: 'dryerTemperatureOffset',
} as const;

export type CheckedPart = keyof typeof partOffsets;

export const checkedParts = Object.keys(partOffsets) as readonly CheckedPart[];

/** How far a part of a machine is from what it is set to. */
export interface PartOffset {
  /** K that it is warmer than set, below 0 where it is colder. */
  readonly value: Kelvins;
  /** The upper end of that: what is safe for a spool must be safe then, too. */
  readonly warmest: Kelvins;
  readonly statement: Statement<number>;
}

/** What a machine states of a part under given conditions, such as a nozzle; null where nothing is known. */
export function partOffset(machine: Machine, part: CheckedPart, conditions: Conditions): PartOffset | null {
  const statement = chooseStatement(machine[partOffsets[part]], conditions);
  if (statement === null) return null;
  const { value, interval } = statement;
  return { value, warmest: interval?.high ?? value, statement };
}

/** `3.9 K colder than it says`. */
export function offsetText({ value }: PartOffset): string {
  const side = value < 0 ? 'colder' : 'warmer';
  return `${shown(rounded(Math.abs(value), 2), 'temperatureDifference')} ${side} than it says`;
}

/** What a part must be set to so that it has a temperature. */
export function settingFor(temperature: DegreesCelsius, offset: PartOffset | null): DegreesCelsius {
  return temperature - (offset?.value ?? 0);
}
