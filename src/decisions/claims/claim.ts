import type { Machine, Statement } from '../../registry/generated/documents.ts';
import type { HotEnd } from '../../registry/nozzle.ts';
import type { Dimension } from '../../units/dimension.ts';

/** Properties of machines that sheets make claims about; the price is none that a bench could test. */
export type ClaimedProperty =
  | 'topSpeed'
  | 'acceleration'
  | 'contourSpeed'
  | 'meltFlow'
  | 'heaterPower'
  | 'meltZoneLength'
  | 'nozzleTemperature'
  | 'bedTemperature'
  | 'chamberTemperature'
  | 'airSpeed'
  | 'soundLevel';

/** Something that a sheet claims of a machine. */
export interface Claim {
  readonly property: ClaimedProperty;
  readonly dimension: Dimension;
  /** `melt flow of hot end "main"`. */
  readonly label: string;
  readonly statement: Statement<number>;
  /** Every statement of the same property, of any basis. */
  readonly beside: readonly Statement<number>[];
  /** The hot end that the claim is about; null where it is about the machine. */
  readonly hotEnd: HotEnd | null;
}

interface Stated extends Omit<Claim, 'statement' | 'beside'> {
  readonly statements: readonly Statement<number>[] | undefined;
}

/** Every claim of a machine and its hot ends but the price, in the order in which people ask. */
export function claimsOf(machine: Machine): Claim[] {
  const { topSpeed, acceleration, contourSpeed, bed, chamber, partCooling, soundLevel } = machine;
  const own = { hotEnd: null };
  const stated: Stated[] = [
    ...machine.hotEnds.flatMap(claimsOfHotEnd),
    { ...own, property: 'topSpeed', dimension: 'speed', label: 'top speed', statements: topSpeed },
    {
      ...own,
      property: 'acceleration',
      dimension: 'acceleration',
      label: 'acceleration',
      statements: acceleration,
    },
    {
      ...own,
      property: 'contourSpeed',
      dimension: 'speed',
      label: 'contour speed',
      statements: contourSpeed,
    },
    {
      ...own,
      property: 'bedTemperature',
      dimension: 'temperature',
      label: 'limit of the bed',
      statements: bed.temperatureLimit,
    },
    {
      ...own,
      property: 'chamberTemperature',
      dimension: 'temperature',
      label: 'limit of the chamber',
      statements: chamber.temperatureLimit,
    },
    {
      ...own,
      property: 'airSpeed',
      dimension: 'speed',
      label: 'speed of the cooling air',
      statements: partCooling?.airSpeed,
    },
    { ...own, property: 'soundLevel', dimension: 'soundLevel', label: 'sound level', statements: soundLevel },
  ];
  return stated.flatMap(({ statements = [], ...rest }) =>
    statements
      .filter(({ basis }) => basis === 'claimed')
      .map((statement) => ({ ...rest, statement, beside: statements })),
  );
}

function claimsOfHotEnd(hotEnd: HotEnd): Stated[] {
  const name = `hot end "${hotEnd.id}"`;
  return [
    {
      hotEnd,
      property: 'meltFlow',
      dimension: 'volumeFlow',
      label: `melt flow of ${name}`,
      statements: hotEnd.meltFlow,
    },
    {
      hotEnd,
      property: 'nozzleTemperature',
      dimension: 'temperature',
      label: `limit of ${name}`,
      statements: hotEnd.temperatureLimit,
    },
    {
      hotEnd,
      property: 'heaterPower',
      dimension: 'power',
      label: `heater of ${name}`,
      statements: hotEnd.heaterPower,
    },
    {
      hotEnd,
      property: 'meltZoneLength',
      dimension: 'length',
      label: `melt zone of ${name}`,
      statements: hotEnd.meltZoneLength,
    },
  ];
}
