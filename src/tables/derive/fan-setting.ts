import type { Feature } from '../../knowledge/feature.ts';
import { conditionsOf, type Pairing } from '../../knowledge/pairing.ts';
import { chooseStatement } from '../../registry/statement.ts';
import type { Fraction } from '../../units/canonical.ts';

/**
 * The part-cooling fan of a printed feature as a share of its full speed: what the policy wants, kept inside of the window
 * of the filament, but that the first layer may always go without; a fan that cannot be set runs fully or not at all. Null
 * where the window of the filament or the wish of the policy is not known, and on travel moves.
 */
export function fanOf(pairing: Pairing, feature: Feature): Fraction | null {
  if (feature === 'travel') return null;
  const { filament, machine, policy } = pairing;
  const window = chooseStatement(filament.data.fan, conditionsOf(pairing))?.value;
  const wanted = policy.data.fan?.[feature];
  if (window === undefined || wanted === undefined) return null;
  const least = feature === 'firstLayer' ? 0 : window.low;
  const setting = Math.min(Math.max(wanted, least), window.high);
  const isAllOrNothing = machine.data.partCooling?.adjustable === false;
  if (!isAllOrNothing) return setting;
  return setting >= 0.5 && window.high >= 1 ? 1 : 0;
}
