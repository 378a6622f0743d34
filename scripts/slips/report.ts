import { type SlipKind, slipKinds } from './slip.ts';
import type { Outcome } from './slipped-registry.ts';

/** The share of each kind that checking should catch, as a fraction: the aims of the project. */
const aims: readonly (readonly [aim: number, kinds: readonly SlipKind[]])[] = [
  [
    1,
    [
      'unit of another dimension',
      'ends swapped',
      'misspelled key',
      'dropped source',
      'dropped evidence',
      'x1000',
    ],
  ],
  [
    0.95,
    [
      'x10',
      '/10',
      'Fahrenheit under Cel',
      'mm/min or cm3/h',
      'm for mm',
      'dropped condition',
      'dropped interval',
      'reading changed after adoption',
    ],
  ],
  [0.8, ['transposed > 30 %']],
  [0.9, ['reading off by 20 %']],
];

/** The share of a kind that checking should catch, as a fraction; null where there is no aim. */
export function aimOf(kind: SlipKind): number | null {
  return aims.find(([, kinds]) => kinds.includes(kind))?.[0] ?? null;
}

/**
 * Prints the table, the aims and, if asked for, every slip that nothing was found about in its file (`missed here`
 * where another file shows it).
 */
export function printReport(outcomes: readonly Outcome[], findings: number, listMissed: boolean): void {
  console.log(`findings of the unbroken registry, not counted: ${findings}`);
  console.log(row(['kind', 'planted', 'schema', 'check', 'anywhere', 'rank']));
  for (const kind of slipKinds) console.log(row(cells(kind, ofKind(outcomes, [kind]))));
  console.log(row(cells('all', outcomes)));
  console.log('');
  for (const [aim, kinds] of aims) for (const kind of kinds) console.log(aimLine(outcomes, kind, aim));
  if (listMissed) {
    for (const { slip, anywhere } of outcomes.filter(({ byCheck }) => !byCheck)) {
      const { kind, profile, pointer, before, after } = slip;
      console.log(
        `${anywhere ? 'missed here' : 'missed'}: ${kind}: ${profile.source.path} ${pointer}: ${before.trim()} -> ${after}`,
      );
    }
  }
}

function ofKind(outcomes: readonly Outcome[], kinds: readonly SlipKind[]): Outcome[] {
  return outcomes.filter(({ slip }) => kinds.includes(slip.kind));
}

function cells(name: string, outcomes: readonly Outcome[]): string[] {
  return [
    name,
    String(outcomes.length),
    percent(share(outcomes, ({ bySchema }) => bySchema)),
    percent(share(outcomes, ({ byCheck }) => byCheck)),
    percent(share(outcomes, ({ anywhere }) => anywhere)),
    medianRank(outcomes),
  ];
}

function row([name = '', ...numbers]: readonly string[]): string {
  return name.padEnd(27) + numbers.map((text) => text.padStart(11)).join('');
}

/** Share as a fraction; null where there is nothing to share. */
export function share(outcomes: readonly Outcome[], caught: (outcome: Outcome) => boolean): number | null {
  return outcomes.length === 0 ? null : outcomes.filter(caught).length / outcomes.length;
}

/** A fraction in percent. */
export function percent(fraction: number | null): string {
  // Rounded down, so that 100 % means all of them.
  return fraction === null ? '-' : `${(Math.floor(fraction * 1000) / 10).toFixed(1)} %`;
}

export function medianRank(outcomes: readonly Outcome[]): string {
  const ranks = outcomes.flatMap(({ rank }) => (rank === null ? [] : [rank])).sort((a, b) => a - b);
  return String(ranks[Math.floor((ranks.length - 1) / 2)] ?? '-');
}

/** Aims are held against findings at the file itself; what is found elsewhere (at the limit of an altered trial) is told. */
function aimLine(outcomes: readonly Outcome[], kind: SlipKind, aim: number): string {
  const members = ofKind(outcomes, [kind]);
  const reached = share(members, ({ byCheck }) => byCheck);
  const anywhere = percent(share(members, (outcome) => outcome.anywhere));
  const verdict = reached === null ? 'not planted' : reached >= aim ? 'reached' : 'missed';
  return `aim ${kind.padEnd(27)} ${percent(aim).padStart(8)}  got ${percent(reached).padStart(8)} (anywhere ${anywhere.padStart(8)})  ${verdict}`;
}
