import { endsOf, figuresOutside } from '../../knowledge/figure-outside.ts';
import { softensAtGlass } from '../../knowledge/softening.ts';
import { factAt } from '../../registry/facts-of-key.ts';
import { spans } from '../../registry/generated/key-facts.ts';
import { shapes } from '../../registry/generated/shapes.ts';
import type { RangeSpan } from '../../registry/key-facts.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import { type Path, shapeAt, toPointer } from '../../registry/shape.ts';
import { statementsOf } from '../../registry/statement.ts';
import type { Range } from '../../units/canonical.ts';
import { shownNumber, shownRange } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** K; how wide the glass transition of a hard amorphous family is at most (common practice, no source; an elastomer's is wider). */
const widestAmorphous = 50;

export const rule: ProfileRule<'polymer' | 'filament'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['polymer', 'filament'],
  severity: 'warning',
  statement: 'A range is not wider than one family or product can be.',
  rationale: 'If one end has lost a digit, the range is so wide that mistakes in filaments are missed.',
  source: `Common practice, no source: wider than any range of the families in Crawford, Plastics Engineering (1998), Table 1.8; the glass transition of a hard amorphous family up to ${widestAmorphous} K, more than grades of one differ by.`,
  example: stating('polymer', 'specificHeatSolid', { bad: '1.1..2.9 J/g/K', good: '1.1..1.9 J/g/K' }),
  *check(profile) {
    const found = new Set(figuresOutside(profile).map(({ path }) => toPointer(path)));
    for (const { path: at, statement } of statementsOf(profile)) {
      const path = [...at, 'value'];
      const span = spanOf(profile, path);
      const shape = shapeAt(shapes[profile.kind], path);
      const [low, high] = endsOf(statement.value);
      if (span === undefined || shape?.type !== 'quantity' || low === undefined || high === undefined)
        continue;
      if (found.has(toPointer(path)) || !isWider({ low, high }, span)) continue;
      const range = shownRange({ low, high }, shape.dimension);
      yield {
        path,
        part: 'value',
        message: `${range} is wider than one ${profile.kind === 'polymer' ? 'family' : 'product'} can be (${spanText(span)})`,
        found: range,
        allowed: spanText(span),
        help: 'Check both ends against the source: a lost digit, a decimal point, the unit of one of them.',
      };
    }
  },
};

function spanOf(profile: AnyProfile, path: Path): RangeSpan | undefined {
  const isAmorphous =
    profile.kind === 'polymer' && path[0] === 'glassTransition' && softensAtGlass(profile.data);
  return isAmorphous ? { kelvin: widestAmorphous } : factAt<RangeSpan>(spans, profile.kind, path);
}

function isWider({ low, high }: Range, span: RangeSpan): boolean {
  if ('kelvin' in span) return high - low > span.kelvin;
  // A range from zero says "up to", and has no factor.
  return low > 0 && high > span.factor * low;
}

function spanText(span: RangeSpan): string {
  return 'kelvin' in span
    ? `up to ${shownNumber(span.kelvin)} K apart`
    : `up to a factor of ${shownNumber(span.factor)} apart`;
}
