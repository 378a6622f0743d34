import { groundsIn } from './calculation.ts';
import { contourFor } from './contour-limit.ts';
import type { EvidenceFault } from './evidence-standing.ts';
import type { PairingLimits } from './pairing-limits.ts';
import type { BareRow } from './speed-row.ts';
import { type RowFlag, rowFlags, type SpeedRow } from './speed-table.ts';
import type { UsableLimit } from './usable-limit.ts';

/** What a reader must know of a row, in the order of `rowFlags`. */
export function flagsOf(row: BareRow, limits: PairingLimits, faults: readonly EvidenceFault[]): RowFlag[] {
  const used = new Set([...row.sizes, ...row.bounds].flatMap(groundsIn).map(({ key }) => key));
  const flags = new Set<RowFlag>(faults.filter(({ ground }) => used.has(ground.key)).map(({ flag }) => flag));
  if (isContourUntested(row, limits)) flags.add('untested');
  for (const limit of bindingLimits(row, limits)) {
    if (limit.isWeak) flags.add(limit.cap === null ? 'weakBasis' : 'capped');
  }
  return rowFlags.filter((flag) => flags.has(flag));
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
    'Rows flagged untested: no contour speed was found at their layer height and acceleration, and the lowest known is used.',
  weakBasis: 'Rows flagged weakBasis: what holds them rests on less than the policy asks for.',
  capped:
    'Rows flagged capped: what holds them rests on less than the policy asks for, and only a share of it is used.',
};

function isContourUntested(
  { bounds, layerHeight, acceleration }: BareRow,
  { contour }: PairingLimits,
): boolean {
  return (
    bounds.some(({ name }) => name === 'quality') &&
    contourFor(contour, layerHeight, acceleration)?.isTested === false
  );
}

/** The limits that the bound that binds a row rests on. */
function bindingLimits({ bounds }: BareRow, limits: PairingLimits): UsableLimit[] {
  const { topSpeed, acceleration, layerTime, melt, contour } = limits;
  const keys = new Set(
    bounds
      .slice(0, 1)
      .flatMap(groundsIn)
      .map(({ key }) => key),
  );
  return [topSpeed, acceleration, layerTime, ...melt, ...contour]
    .filter((limit) => limit !== null)
    .filter(({ ground }) => keys.has(ground.key));
}
