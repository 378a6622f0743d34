import { addedPlace, additionsTo } from '../../registry/addition.ts';
import type { Hit } from '../../registry/hit.ts';
import type { Profile } from '../../registry/profile.ts';
import type { ProfileRule, RuleContext } from './rule.ts';

/** A hit at the place in an addition that it is about. */
interface AdditionHit {
  readonly addition: Profile<'addition'>;
  readonly hit: Hit;
}

/**
 * What a rule finds in the additions to a filament: it judges the filament as extended by them, and what it finds at an
 * added statement is moved to the file that holds it. What stands in the filament itself is left to its own judgement.
 */
export function* additionHits(
  rule: ProfileRule,
  filament: Profile<'filament'>,
  context: RuleContext,
): Generator<AdditionHit> {
  const { registry } = context;
  const additions = additionsTo(filament.id, registry.addition);
  const whole = registry.filament.get(filament.id);
  if (additions.length === 0 || whole === undefined || whole.source !== filament.source) return;
  for (const hit of rule.check(whole, context)) {
    const place = addedPlace(hit.path, filament, additions);
    if (place !== null) yield { addition: place.addition, hit: { ...hit, path: place.path } };
  }
}
