/**
 * What a reader must know of a row: `unsupported`, a limit is not what its own trial supports; `stale`, a trial was
 * run with other controller software; `acknowledged`, one of these holds, and a reviewer has accepted it; `untested`, a contour speed was not found at this layer height and acceleration;
 * `weakBasis`, what binds rests on less than the policy asks for; `capped`, of which therefore only a share is used;
 * `simulated`, a trial that it rests on was never run on a bench; `invented`, a profile that it rests on is made up; `quirk`, a field note
 * of the bench concerns it.
 */
export type RowFlag = (typeof rowFlags)[number];

export const rowFlags = [
  ...(['unsupported', 'stale', 'acknowledged', 'untested', 'weakBasis', 'capped'] as const),
  ...(['simulated', 'invented', 'quirk'] as const),
] as const;
