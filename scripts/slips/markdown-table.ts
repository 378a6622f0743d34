import { aimOf, medianRank, percent, share } from './report.ts';
import { slipKinds } from './slip.ts';
import type { Outcome } from './slipped-registry.ts';

/** The catch rates as the README shows them. */
export function markdownTable(outcomes: readonly Outcome[]): string {
  const rows = slipKinds.flatMap((kind) => {
    const members = outcomes.filter(({ slip }) => slip.kind === kind);
    if (members.length === 0) return [];
    const schema = share(members, ({ bySchema }) => bySchema);
    const check = share(members, ({ byCheck }) => byCheck);
    const aim = aimOf(kind);
    const aimed = aim === null ? '' : percent(aim);
    const cells = [kind, members.length, percent(schema), percent(check), aimed, medianRank(members)];
    return [`| ${cells.join(' | ')} |`];
  });
  const head = [
    '| slip | planted | caught by schema | caught by `check` | aim | median rank |',
    '| --- | --: | --: | --: | --: | --: |',
  ];
  return [...head, ...rows].join('\n');
}
