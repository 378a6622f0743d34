import { endsOf, figuresOutside } from '../../knowledge/figure-outside.ts';
import type { Statement } from '../../registry/generated/documents.ts';
import { shapes } from '../../registry/generated/shapes.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import type { Hit } from '../../registry/hit.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import { type Path, shapeAt, toPointer } from '../../registry/shape.ts';
import { statementsOf } from '../../registry/statement.ts';
import type { Range } from '../../units/canonical.ts';
import type { Dimension } from '../../units/dimension.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Between ranges of two sources, grades and methods explain so much (common practice, no source). */
const largestFactor = 1.6;
const largestGap = 40;
/** Decomposition depends on heating rate and gas: old tables lie 100 K below thermogravimetry. */
const largestDecompositionGap = 120;

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'profile',
  severity: 'warning',
  statement: 'Two sources of one property under the same conditions do not contradict each other.',
  rationale: 'Sources are compared, never averaged; if they are far apart, one was mistyped or misread.',
  source: `Common practice, no source: ranges apart by a factor of ${largestFactor}, temperatures by ${largestGap} K, decomposition by ${largestDecompositionGap} K.`,
  example: alike(
    'polymer',
    { bad: '2.4..2.6 J/g/K', good: '1.4..1.6 J/g/K' },
    (value) => `
specificHeatSolid:
  - {value: 1.1..1.3 J/g/K, basis: published, source: invented-plastics-tables}
  - {value: ${value}, basis: published, source: plumstead-wren-sheet}`,
  ),
  *check(profile) {
    for (const group of groupedBy(sourcedStatements(profile), ({ key }) => key).values()) {
      const worst = mostDisputed(group);
      if (worst !== null) yield disagreement(worst.one, worst.other);
    }
  },
};

/** The statement that most others contradict, of several the last, with the first that contradicts it. */
function mostDisputed(
  group: readonly SourcedStatement[],
): { one: SourcedStatement; other: SourcedStatement } | null {
  const disputes = group.map((one) => ({ one, others: group.filter((other) => contradict(one, other)) }));
  const most = Math.max(...disputes.map(({ others }) => others.length));
  const worst = disputes.findLast(({ others }) => others.length === most);
  const [other] = worst?.others ?? [];
  return worst === undefined || other === undefined ? null : { one: worst.one, other };
}

interface SourcedStatement {
  /** Property and conditions in one text. */
  readonly key: string;
  readonly path: Path;
  readonly range: Range;
  readonly dimension: Dimension;
  readonly source: string;
}

/** Statements of a source beside which there is another one of the same property under the same conditions. */
function sourcedStatements(profile: AnyProfile): SourcedStatement[] {
  const keyed = [...statementsOf(profile)].flatMap(({ path, statement }) => {
    const { basis, source } = statement;
    // A claim that a bench has refuted is no slip, but what the registry is for.
    if (source === undefined || (basis !== 'published' && basis !== 'claimed')) return [];
    return [{ path, statement, source, key: `${toPointer(path.slice(0, -1))} ${conditionText(statement)}` }];
  });
  const several = [...groupedBy(keyed, ({ key }) => key).values()].filter(({ length }) => length > 1);
  if (several.length === 0) return [];
  // An impossible figure is found as such, and its statement contradicts all others.
  const impossible = new Set(
    figuresOutside(profile).flatMap((figure) => (figure.impossible ? toPointer(figure.path) : [])),
  );
  return several.flat().flatMap(({ path, statement, source, key }) => {
    if (impossible.has(toPointer([...path, 'value']))) return [];
    const shape = shapeAt(shapes[profile.kind], [...path, 'value']);
    const [low, high = low] = endsOf(statement.value);
    if (shape?.type !== 'quantity' || low === undefined || high === undefined) return [];
    return [{ key, path, range: { low, high }, dimension: shape.dimension, source }];
  });
}

function conditionText({ at = {} }: Statement<unknown>): string {
  return JSON.stringify(Object.entries(at).sort(([a], [b]) => (a < b ? -1 : 1)));
}

function contradict(one: SourcedStatement, other: SourcedStatement): boolean {
  if (one.source === other.source) return false;
  const [lower, upper] = one.range.high <= other.range.low ? [one, other] : [other, one];
  const [end, start] = [lower.range.high, upper.range.low];
  if (one.dimension !== 'temperature') return end > 0 && start > largestFactor * end;
  return start - end > largestGapOf(one);
}

/** How far apart, in K, sources may state a temperature. */
function largestGapOf({ path }: SourcedStatement): number {
  return path.includes('decomposition') ? largestDecompositionGap : largestGap;
}

function disagreement(one: SourcedStatement, other: SourcedStatement): Hit {
  return {
    path: [...one.path, 'value'],
    part: 'value',
    message: `${textOf(one)} of ${one.source} is far from ${textOf(other)} of ${other.source}, under the same conditions`,
    found: textOf(one),
    allowed: `within ${one.dimension === 'temperature' ? `${largestGapOf(one)} K` : `a factor of ${largestFactor}`} of ${textOf(other)}`,
    help: 'Read both sources again: digits, units, conditions. If both are true, say in a `note` why, and acknowledge the finding.',
  };
}

function textOf({ range, dimension }: SourcedStatement): string {
  return range.low === range.high ? shown(range.low, dimension) : shownRange(range, dimension);
}
