import type { Origin } from '../../knowledge/origin.ts';
import { sourcedValuesIn } from './calculation.ts';
import type { BareCondition } from './conditions/condition-row.ts';
import type { SourcedValueFault } from './evidence-standing.ts';
import { contourFor } from './limits/contour-limit.ts';
import type { PairingLimits } from './limits/pairing-limits.ts';
import { type RowFlag, rowFlags } from './row-flag.ts';
import type { SourcedValue } from './sourced-value.ts';
import type { BareRow } from './speed-row.ts';
import type { SpeedRow } from './speed-table.ts';

/** What a reader must know of a row of speeds, in the order of `rowFlags`. */
export function flagsOf(
  origin: Origin,
  row: BareRow,
  limits: PairingLimits,
  faults: readonly SourcedValueFault[],
): RowFlag[] {
  const used = new Set([...row.sizes, ...row.bounds].flatMap(sourcedValuesIn).map(({ key }) => key));
  const binding = row.bounds.slice(0, 1).flatMap(sourcedValuesIn);
  const untested = isContourUntested(row, limits) ? (['untested'] as const) : [];
  return inOrder([
    ...faultFlags(used, faults),
    ...untested,
    ...weakFlags(binding, limits),
    ...originFlags(origin, [...binding, ...behindMelt(row)]),
  ]);
}

/** What a reader must know of a condition, in the same order. */
export function conditionFlags(
  origin: Origin,
  { sourcedValues }: BareCondition,
  limits: PairingLimits,
  faults: readonly SourcedValueFault[],
): RowFlag[] {
  const used = new Set(sourcedValues.map(({ key }) => key));
  return inOrder([
    ...faultFlags(used, faults),
    ...weakFlags(sourcedValues, limits),
    ...originFlags(origin, sourcedValues),
  ]);
}

/** What the melt limit of a row was fitted to, where that is what binds. */
function behindMelt({ bound, sizes }: BareRow): readonly SourcedValue[] {
  return bound === 'melt' ? sizes.flatMap(({ fittedTo = [] }) => fittedTo) : [];
}

/** Whether a trial behind the numbers was simulated, or a profile of the table is invented. */
function originFlags({ simulated, invented }: Origin, sourcedValues: readonly SourcedValue[]): RowFlag[] {
  const isSimulated = sourcedValues.some(({ evidence }) => simulated.includes(evidence ?? ''));
  return [
    ...(isSimulated ? (['simulated'] as const) : []),
    ...(invented.length > 0 ? (['invented'] as const) : []),
  ];
}

function inOrder(flags: readonly RowFlag[]): RowFlag[] {
  return rowFlags.filter((flag) => flags.includes(flag));
}

function faultFlags(used: ReadonlySet<string>, faults: readonly SourcedValueFault[]): RowFlag[] {
  return faults.filter(({ sourcedValue }) => used.has(sourcedValue.key)).map(({ flag }) => flag);
}

/** Flags of the limits among some sourcedValues that rest on less than the policy asks for. */
function weakFlags(sourcedValues: readonly SourcedValue[], limits: PairingLimits): RowFlag[] {
  const keys = new Set(sourcedValues.map(({ key }) => key));
  const { topSpeed, acceleration, layerTime, melt, contour } = limits;
  return [topSpeed, acceleration, layerTime, ...melt, ...contour]
    .filter((limit) => limit !== null)
    .filter(({ ground, isWeak }) => isWeak && keys.has(ground.key))
    .map(({ cap }) => (cap === null ? 'weakBasis' : 'capped'));
}

/** A sentence for each kind of flag that the rows carry, but for those about evidence, which have their own. */
export function flagWarnings(rows: readonly SpeedRow[]): string[] {
  return rowFlags.flatMap((flag) => {
    const sentence = sentences[flag];
    return sentence !== undefined && rows.some(({ flags }) => flags.includes(flag)) ? [sentence] : [];
  });
}

const sentences: Readonly<Partial<Record<RowFlag, string>>> = {
  untested:
    'For some rows no contour speed was found at their layer height and acceleration, and the lowest known is used (flag untested).',
  weakBasis: 'What limits some rows rests on less than the policy asks for (flag weakBasis).',
  capped:
    'What limits some rows rests on less than the policy asks for, and only a share of it is used (flag capped).',
};

function isContourUntested(
  { bounds, layerHeight, acceleration }: BareRow,
  { contour }: PairingLimits,
): boolean {
  return (
    bounds.some(({ name, isOutright }) => name === 'quality' && !isOutright) &&
    contourFor(contour, layerHeight, acceleration)?.isTested === false
  );
}
