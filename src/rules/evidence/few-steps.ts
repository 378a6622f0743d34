import { ladderReadings } from '../../bench/flow-ladder/ladder-readings.ts';
import { ladder } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Below this number a ladder cannot be reduced at all, which another rule says. */
const fewest = 4;
const enough = 6;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'A ladder has at least six different flows.',
  rationale:
    'With fewer, the plateau and the onset cannot be told apart, and the interval rests on assumptions.',
  source: 'Common practice, no source: three flows that deliver in full, three around and beyond the limit.',
  example: { kind: 'trial', bad: ladder([8, 12, 16, 20, 24]), good: ladder([8, 12, 14, 16, 18, 20, 22, 24]) },
  *check(profile) {
    const steps = new Set(ladderReadings(profile).map(({ flow }) => flow)).size;
    if (steps < fewest || steps >= enough) return;
    yield {
      path: ['observations'],
      part: 'key',
      message: `The ladder has only ${steps} different flows`,
      found: String(steps),
      allowed: `${enough} and more`,
      help: 'Add flows between the highest with full delivery and the lowest without.',
    };
  },
};
