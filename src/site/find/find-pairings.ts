import { basisWords } from '../../knowledge/origin.ts';
import { type Basis, basesByStrength } from '../../registry/statement.ts';
import { formatNumber } from '../../units/format-quantity.ts';
import { printedUnit } from '../../units/print-symbols.ts';
import type { CataloguedPairing, TestedLimit } from '../catalogued-pairing.ts';

/** What a pairing is to hold; what is null is not asked. Quantities in canonical units. */
export interface Question {
  readonly policy: string | null;
  readonly flow: number | null;
  readonly temperature: number | null;
  readonly material: string | null;
  readonly diameter: number | null;
  readonly polymer: string | null;
  readonly basis: Basis | null;
  readonly chamber: 'enclosed' | 'heated' | null;
  /** dB(A) */
  readonly noise: number | null;
  readonly price: number | null;
}

/** A pairing with what answers the question: the limit that counts, and the reasons in words. */
export interface FoundPairing {
  readonly pairing: CataloguedPairing;
  readonly limit: TestedLimit;
  readonly reason: string;
}

/** What holds all that is asked, the largest flow first, and what lacks one thing only. */
export interface Answer {
  readonly found: readonly FoundPairing[];
  readonly nearly: readonly FoundPairing[];
}

interface Verdict {
  readonly holds: boolean;
  readonly words: string;
}

export function findPairings(pairings: readonly CataloguedPairing[], question: Question): Answer {
  const asked = pairings.filter(({ policy }) => question.policy === null || policy === question.policy);
  const judged = asked.flatMap((pairing) => {
    const limit = limitFor(pairing, question);
    return limit === null ? [] : [{ pairing, limit, verdicts: verdictsOn(pairing, limit, question) }];
  });
  const lacking = (count: number) =>
    judged
      .filter(({ verdicts }) => verdicts.filter(({ holds }) => !holds).length === count)
      .toSorted((one, other) => other.limit.value - one.limit.value);
  return {
    found: lacking(0).map(({ verdicts, ...rest }) => ({ ...rest, reason: wordsOf(verdicts, true) })),
    nearly: lacking(1).map(({ verdicts, ...rest }) => ({ ...rest, reason: wordsOf(verdicts, false) })),
  };
}

function wordsOf(verdicts: readonly Verdict[], holds: boolean): string {
  return verdicts
    .filter((verdict) => verdict.holds === holds)
    .map(({ words }) => words)
    .join('; ');
}

/**
 * The limit that answers: the largest at the tested temperatures that are allowed, on the basis that is asked where there is
 * such a one; else that of the lowest temperature.
 */
function limitFor({ limits }: CataloguedPairing, { temperature, basis }: Question): TestedLimit | null {
  const allowed = limits.filter((limit) => temperature === null || limit.temperature <= temperature);
  const strong = allowed.filter((limit) => isAtLeast(limit.basis, basis));
  const best = (some: readonly TestedLimit[]) =>
    some.reduce<TestedLimit | null>(
      (most, limit) => (most === null || limit.value > most.value ? limit : most),
      null,
    );
  return best(strong) ?? best(allowed) ?? limits[0] ?? null;
}

function isAtLeast(basis: Basis, asked: Basis | null): boolean {
  return asked === null || basesByStrength.indexOf(basis) <= basesByStrength.indexOf(asked);
}

function verdictsOn(pairing: CataloguedPairing, limit: TestedLimit, question: Question): Verdict[] {
  const { flow, temperature, material, diameter, polymer, basis, chamber, noise, price } = question;
  return [
    ...asks(flow, (least) => limit.value >= least, `${number(limit.value)} ${flowUnit}`),
    ...asks(temperature, (most) => limit.temperature <= most, `tested at ${number(limit.temperature)} °C`),
    ...asks(basis, (least) => isAtLeast(limit.basis, least), basisWords(limit.basis, limit.isSimulated)),
    ...asks(
      material,
      (wanted) => pairing.nozzleMaterial === wanted,
      `nozzle of ${materialWords(pairing.nozzleMaterial)}`,
    ),
    ...asks(
      diameter,
      (wanted) => pairing.nozzleDiameter === wanted,
      `nozzle ${number(pairing.nozzleDiameter)} mm`,
    ),
    ...asks(polymer, (wanted) => pairing.polymer === wanted, pairing.polymer),
    ...asks(chamber, (wanted) => pairing.chamber[wanted], chamberWords(pairing)),
    ...known(
      noise,
      pairing.noise,
      (most, value) => value <= most,
      (value) => `${number(value)} dB(A)`,
      'sound level',
    ),
    ...known(
      price,
      pairing.price?.amount ?? null,
      (most, value) => value <= most,
      (value) => `${number(value)} ${pairing.price?.currency ?? ''}`,
      'price',
    ),
  ];
}

const flowUnit = printedUnit('mm3/s');

function asks<Wanted>(wanted: Wanted | null, isMet: (wanted: Wanted) => boolean, words: string): Verdict[] {
  return wanted === null ? [] : [{ holds: isMet(wanted), words }];
}

/** A question for what may not be known. */
function known(
  wanted: number | null,
  value: number | null,
  isMet: (wanted: number, value: number) => boolean,
  wordsFor: (value: number) => string,
  what: string,
): Verdict[] {
  if (wanted === null) return [];
  return [
    value === null
      ? { holds: false, words: `${what} not known` }
      : { holds: isMet(wanted, value), words: wordsFor(value) },
  ];
}

function chamberWords({ chamber: { enclosed, heated } }: CataloguedPairing): string {
  return heated ? 'heated chamber' : enclosed ? 'enclosed chamber' : 'open chamber';
}

/** `hardened steel`. */
export function materialWords(material: string): string {
  return material.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

function number(value: number): string {
  return formatNumber(value, { significantDigits: 4 });
}
