import { features } from '../../knowledge/feature.ts';
import type { Pairing } from '../../knowledge/pairing.ts';
import type { HouseCap, SpeedRow } from './speed-table.ts';

/** The outright caps of a policy that hold some row of a table where it is, in the order of the features. */
export function capsOf({ policy }: Pairing, rows: readonly SpeedRow[]): HouseCap[] {
  return features.flatMap((feature): HouseCap[] => {
    const cap = policy.data.caps?.[feature];
    const capped = rows.filter((row) => row.feature === feature);
    const holdsSpeed = cap?.speed !== undefined && capped.some(({ bound }) => bound === 'policy');
    const holdsAcceleration =
      cap?.acceleration !== undefined && capped.some(({ acceleration }) => acceleration === cap.acceleration);
    if (cap === undefined || !(holdsSpeed || holdsAcceleration)) return [];
    return [
      {
        feature,
        speed: holdsSpeed ? (cap.speed ?? null) : null,
        acceleration: holdsAcceleration ? (cap.acceleration ?? null) : null,
        reason: cap.reason,
      },
    ];
  });
}
