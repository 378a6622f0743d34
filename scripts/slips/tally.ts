import { wilsonInterval } from '../wilson-interval.ts';
import type { Outcome } from './planted-registry.ts';
import { aimOf, type SlipKind, slipKindNames } from './slip-kinds.ts';

/** What became of the slips of a kind. */
export interface Tally {
  readonly name: SlipKind | 'all';
  readonly planted: number;
  readonly refusedByForm: number;
  /** Slips that the rates are about: those that the form lets pass, or all where it lets none pass. */
  readonly judged: number;
  /** Share of them that an error or a warning names, as a fraction, with its 95 % interval. */
  readonly caught: number;
  readonly interval: readonly [low: number, high: number];
  readonly aim: number | null;
  /** Share of what is caught that is an error. */
  readonly errors: number;
  /** Place of the finding that names the slip over the whole report; null where none is caught. */
  readonly medianRank: number | null;
  /** Share of what is caught whose finding is among the first three of the report. */
  readonly inFirstThree: number;
  /** Mean number of findings that a slip brings, of those that bring any. */
  readonly findings: number;
}

export interface Tallies {
  /** What a form cannot refuse. */
  readonly passing: readonly Tally[];
  /** Kinds of which the form refuses every slip. */
  readonly refused: readonly Tally[];
  /** All slips that the form lets pass. */
  readonly all: Tally;
}

export function tallies(outcomes: readonly Outcome[]): Tallies {
  const byKind = slipKindNames
    .map((kind) => ({ kind, members: outcomes.filter(({ slip }) => slip.kind === kind) }))
    .filter(({ members }) => members.length > 0);
  const isRefused = (members: readonly Outcome[]) => members.every(({ byForm }) => byForm);
  return {
    passing: byKind
      .filter(({ members }) => !isRefused(members))
      .map(({ kind, members }) => tally(kind, members, passing(members))),
    refused: byKind
      .filter(({ members }) => isRefused(members))
      .map(({ kind, members }) => tally(kind, members, members)),
    all: tally('all', outcomes, passing(outcomes)),
  };
}

function passing(outcomes: readonly Outcome[]): Outcome[] {
  return outcomes.filter(({ byForm }) => !byForm);
}

function tally(name: Tally['name'], planted: readonly Outcome[], judged: readonly Outcome[]): Tally {
  const caught = judged.filter(({ rank }) => rank !== null);
  const ranks = caught.flatMap(({ rank }) => (rank === null ? [] : [rank])).sort((a, b) => a - b);
  const telling = judged.filter(({ brought }) => brought.length > 0);
  return {
    name,
    planted: planted.length,
    refusedByForm: planted.length - passing(planted).length,
    judged: judged.length,
    caught: caught.length / judged.length,
    interval: wilsonInterval(caught.length, judged.length),
    aim: name === 'all' ? null : aimOf(name),
    errors: caught.filter(({ severity }) => severity === 'error').length / caught.length,
    medianRank: ranks[Math.floor((ranks.length - 1) / 2)] ?? null,
    inFirstThree: ranks.filter((rank) => rank <= 3).length / ranks.length,
    findings: telling.reduce((sum, { brought }) => sum + brought.length, 0) / telling.length,
  };
}
