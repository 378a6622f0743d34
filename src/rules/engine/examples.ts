import type { Kind } from '../../registry/kind.ts';
import type { RuleExample } from './rule.ts';

/** What differs between the text that a rule finds and the one that it accepts. */
interface Variants {
  readonly bad: string;
  readonly good: string;
}

/** An example whose two texts differ in one stretch, wherever that occurs in them. */
export function alike(
  kind: Kind,
  { bad, good }: Variants,
  keys: (stretch: string) => string,
  options: Pick<RuleExample, 'copied'> = {},
): RuleExample {
  return { kind, bad: keys(bad), good: keys(good), ...options };
}

/** An example of a property with one statement, as the source of the sample profile gives it. */
export function stating(kind: keyof typeof provenance, key: string, variants: Variants): RuleExample {
  return alike(kind, variants, (value) => `\n${key}:\n  - ${statement(kind, value)}`);
}

/** An example of a property with one statement that rests on nothing but habit. */
export function assuming(kind: Kind, key: string, variants: Variants): RuleExample {
  return alike(
    kind,
    variants,
    (value) => `\n${key}:\n  - {value: ${value}, basis: assumed, reason: Bench habit}`,
  );
}

/** A statement in one line, as the source of the sample profile of the kind gives it. */
function statement(kind: keyof typeof provenance, value: string): string {
  return `{value: ${value}, ${provenance[kind]}}`;
}

const provenance = {
  machine: 'basis: claimed, source: plumstead-wren-sheet',
  filament: 'basis: claimed, source: oakhollow-clover-petg-sheet',
  polymer: 'basis: published, source: invented-plastics-tables',
} satisfies Partial<Record<Kind, string>>;

/** Mass of 400 mm of filament at each commanded flow of the sample ladder, g. */
const ladderMasses: ReadonlyMap<number, number> = new Map([
  [8, 1.223],
  [10, 1.228],
  [12, 1.225],
  [14, 1.225],
  [16, 1.22],
  [18, 1.205],
  [20, 1.158],
  [22, 1.109],
  [24, 1.042],
]);

/** Every flow of the sample ladder, mm³/s. */
export const allFlows: readonly number[] = [...ladderMasses.keys()];

/**
 * How a ladder differs from the sample one: a multiple of its flows, their unit, longer pieces in mm, digits of masses,
 * pieces that are so many g heavier and lighter in turn, as those of another run are.
 */
interface LadderChanges {
  readonly times?: number;
  readonly unit?: string;
  readonly length?: number;
  readonly digits?: number;
  readonly apart?: number;
}

/** The observations of the sample ladder at some of its flows. */
export function ladder(
  flows: readonly number[],
  { times = 1, unit = 'mm3/s', length = 400, digits = 3, apart = 0 }: LadderChanges = {},
): string {
  const massOf = (flow: number) => ((ladderMasses.get(flow) ?? 0) * length) / 400;
  const rows = flows.map((flow, index) => {
    const mass = massOf(flow) + (index % 2 === 0 ? apart : -apart);
    return `\n    - [${times * flow}, ${length}, ${mass.toFixed(digits)}]`;
  });
  return `
observations:
  columns: {commandedFlow: ${unit}, feedLength: mm, extrudedMass: g}
  rows:${rows.join('')}`;
}

/** What an example states of a hot end, besides the nozzle of 0.6 mm that it always has. */
interface HotEndText {
  readonly heaterPower?: string;
  readonly meltZoneLength?: string;
  readonly driveForce?: string;
  readonly temperatureLimit?: string;
  readonly liner?: string;
  /** A claimed melt flow, and the conditions that it holds for besides the nozzle. */
  readonly meltFlow?: readonly [flow: string, conditions: string];
}

const hotEndClaims = ['heaterPower', 'meltZoneLength', 'driveForce', 'temperatureLimit'] as const;

/** The hot ends of a machine: one, for filament of 1.75 mm. */
export function hotEnd(text: HotEndText): string {
  const claims = hotEndClaims.map((key) =>
    text[key] === undefined ? '' : `\n    ${key}:\n      - ${statement('machine', text[key])}`,
  );
  return `
hotEnds:
  - id: main
    filamentDiameter: 1.75 mm${claims.join('')}
    liner: ${text.liner ?? 'allMetal'}
    nozzles:
      - {id: hs-0.6, diameter: 0.6 mm, material: hardenedSteel}${claimedFlow(text.meltFlow)}`;
}

function claimedFlow(meltFlow: HotEndText['meltFlow']): string {
  if (meltFlow === undefined) return '';
  const [flow, conditions] = meltFlow;
  return `
    meltFlow:
      - value: ${flow}
        basis: claimed
        source: plumstead-wren-sheet
        at: {nozzle: hs-0.6, ${conditions}}`;
}

/** A limit below its interval, which an acknowledgement in the same profile accepts. */
export const acknowledgedLimit = `
meltFlow:
  - value: 8 mm3/s
    interval: 19.5..20.3 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    readings: 2bf0b98f14c9bbd5
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel, batch: 26-0002}
    date: '2026-02-12'${acknowledging('evidence/far-below-interval, at: /meltFlow/0, found: 8 mm3/s')}`;

/** An acknowledgement of what a rule finds at a place. */
export function acknowledging(ruleAndFinding: string, until = '2027-01-31'): string {
  return `
acknowledged:
  - {rule: ${ruleAndFinding}, reason: The heater is worn, until: '${until}'}`;
}

/** Reference prints of the sample job, minutes and grams each, as a trial of their own. */
export function prints(...rows: readonly string[]): string {
  return `
id: wren-hook-print
method: referencePrint
job: hook
settings:
  outerContour: {speed: 100 mm/s, acceleration: 5000 mm/s2}
  infill: {speed: 130 mm/s, acceleration: 8200 mm/s2}
  travel: {speed: 430 mm/s, acceleration: 8200 mm/s2}
observations:
  columns: {printTime: min, mass: g}
  rows:${rows.map((row) => `\n    - [${row}]`).join('')}`;
}
