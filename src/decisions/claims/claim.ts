import { factOf, keyAt, labelIn } from '../../registry/facts-of-key.ts';
import type { Statement } from '../../registry/generated/documents.ts';
import { claims, limitedSettings, safeDirections } from '../../registry/generated/key-facts.ts';
import { shapes } from '../../registry/generated/shapes.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import { claimedProperty, type SafeDirection } from '../../registry/key-facts.ts';
import type { HotEnd } from '../../registry/nozzle.ts';
import type { Profile } from '../../registry/profile.ts';
import { type Path, shapeAt, toPointer } from '../../registry/shape.ts';
import { statementsOf } from '../../registry/statement.ts';
import type { Dimension } from '../../units/dimension.ts';

/** Something that a sheet claims of a machine. */
export interface Claim {
  /** What the schema of machines marks as a claim: the setting that a limit limits, else the key itself. */
  readonly property: string;
  readonly dimension: Dimension;
  /** `melt flow of hot end "main"`. */
  readonly label: string;
  /** Whether a machine that has less of it than claimed is the better one. */
  readonly lessIsBetter: boolean;
  /** The condition of trials that it is the highest setting of; null where it is none. */
  readonly limits: string | null;
  readonly statement: Statement<number>;
  /** Every statement of the same property, of any basis. */
  readonly beside: readonly Statement<number>[];
  /** The hot end that the claim is about; null where it is about the machine. */
  readonly hotEnd: HotEnd | null;
}

interface Property {
  readonly path: Path;
  readonly place: string;
  /** Its place among the claims. */
  readonly order: number;
  readonly statements: readonly Statement<number>[];
}

/** Every claim of a machine and its hot ends that the schema marks as one, in the order that it gives, hot ends first. */
export function claimsOf(machine: Profile<'machine'>): Claim[] {
  const properties = claimedProperties(machine);
  const ofHotEnds = machine.data.hotEnds.map((_, index) =>
    properties.filter(({ path }) => path[0] === 'hotEnds' && path[1] === index),
  );
  const own = properties.filter(({ path }) => path[0] !== 'hotEnds');
  const stated = [...ofHotEnds, own].flatMap((group) =>
    group.toSorted((a, b) => a.order - b.order).flatMap((property) => claimsOfProperty(machine, property)),
  );
  return [...stated, ...dryerClaim(machine)];
}

/** The setting of a dryer, or the highest of its settings, which stands in a profile without a basis: the sheet claims it. */
function dryerClaim(machine: Profile<'machine'>): Claim[] {
  const { dryer, sheet } = machine.data;
  const key = dryer?.setting === 'adjustable' ? 'range' : 'temperature';
  const value = key === 'range' ? dryer?.range?.high : dryer?.temperature;
  if (value === undefined) return [];
  return [
    {
      property: 'dryerTemperature',
      dimension: 'temperature',
      label: labelIn(machine, ['dryer', key]),
      lessIsBetter: false,
      limits: 'dryerTemperature',
      statement: { value, basis: 'claimed', ...(sheet !== undefined && { source: sheet }) },
      beside: [],
      hotEnd: null,
    },
  ];
}

/** The properties that hold claims, in the order of the profile. */
function claimedProperties(machine: Profile<'machine'>): Property[] {
  const stated = groupedBy(statementsOf(machine), ({ path }) => toPointer(path.slice(0, -1)));
  return [...stated.values()].flatMap((group) => {
    const path = group[0]?.path.slice(0, -1) ?? [];
    const { place } = keyAt('machine', path);
    const order = factOf<number>(claims, 'machine', place);
    if (order === undefined) return [];
    // The schema marks as claims what is stated as single numbers.
    const statements = group.map(({ statement }) => statement as Statement<number>);
    return [{ path, place, order, statements }];
  });
}

function claimsOfProperty(machine: Profile<'machine'>, { path, place, statements }: Property): Claim[] {
  const shape = shapeAt(shapes.machine, [...path, 0, 'value']);
  if (shape?.type !== 'quantity') return [];
  const limits = factOf<string>(limitedSettings, 'machine', place);
  const hotEnd = path[0] === 'hotEnds' ? (machine.data.hotEnds[Number(path[1])] ?? null) : null;
  const claim = {
    property: claimedProperty(place, limits),
    dimension: shape.dimension,
    label: labelIn(machine, path),
    lessIsBetter: factOf<SafeDirection>(safeDirections, 'machine', place) === 'above',
    limits: limits ?? null,
    beside: statements,
    hotEnd,
  };
  return statements.filter(({ basis }) => basis === 'claimed').map((statement) => ({ ...claim, statement }));
}
