import { middle } from '../../statistics/middle.ts';
import type { CataloguedPairing } from '../catalogued-pairing.ts';
import type {
  CatalogueData,
  CatalogueFilament,
  CatalogueMachine,
  CatalogueNozzle,
  FamilyClaim,
} from '../data/catalogue-data.ts';
import type { Question } from './find-pairings.ts';

/** A nozzle of a machine that holds a question by what is stated for a whole family, with the filaments that nobody has tested in it. */
export interface UntestedNozzle {
  readonly machine: CatalogueMachine;
  readonly nozzle: CatalogueNozzle;
  /** The largest of the flows that would do, mm3/s. */
  readonly flow: number;
  readonly filaments: readonly CatalogueFilament[];
}

/**
 * Pairings without a page that would hold what is asked if what the machine states for the family holds for the filament: worth a
 * ladder. The largest flow comes first.
 */
export function untestedPairings(
  { machines, filaments }: CatalogueData,
  pairings: readonly CataloguedPairing[],
  question: Question,
): UntestedNozzle[] {
  const tested = new Set(pairings.map(keyOf));
  const asked = filaments.filter(({ polymer }) => (question.polymer ?? polymer) === polymer);
  return machines
    .filter((machine) => suits(machine, question))
    .flatMap((machine) =>
      machine.nozzles
        .filter((nozzle) => fits(nozzle, question))
        .flatMap((nozzle) => {
          const claims = nozzle.claims.filter(({ flow }) => flow >= (question.flow ?? 0));
          const untested = asked.filter(
            (filament) =>
              claims.some((claim) => holdsFor(claim, nozzle, filament, question)) &&
              !tested.has(keyOf({ machine: machine.id, nozzle: nozzle.id, filament: filament.id })),
          );
          const flow = Math.max(...claims.map((claim) => claim.flow));
          return untested.length === 0 ? [] : [{ machine, nozzle, flow, filaments: untested }];
        }),
    )
    .sort((one, other) => other.flow - one.flow);
}

function keyOf(pairing: Pick<CataloguedPairing, 'machine' | 'nozzle' | 'filament'>): string {
  return `${pairing.machine} ${pairing.nozzle} ${pairing.filament}`;
}

function suits({ chamber, noise, price }: CatalogueMachine, question: Question): boolean {
  return (
    (question.chamber === null || chamber[question.chamber]) &&
    (question.noise === null || (noise !== null && noise <= question.noise)) &&
    (question.price === null || (price !== null && price.amount <= question.price))
  );
}

function fits({ material, diameter }: CatalogueNozzle, question: Question): boolean {
  return (question.material ?? material) === material && (question.diameter ?? diameter) === diameter;
}

/** A statement without a temperature is read at the middle of the window of the filament, as tables read it. */
function holdsFor(
  { polymer, temperature }: FamilyClaim,
  { feeds }: CatalogueNozzle,
  { polymer: own, diameter, window }: CatalogueFilament,
  { temperature: most }: Question,
): boolean {
  const at = temperature ?? (window === null ? null : middle(window));
  if (at === null || (polymer ?? own) !== own || Math.abs(feeds - diameter) >= 0.01) return false;
  const isInWindow = window === null || (at >= window.low && at <= window.high);
  return isInWindow && (most === null || at <= most);
}
