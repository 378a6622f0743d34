import { simulations } from '../methods/simulations.ts';

export type SimulatedMethod = keyof typeof simulations;

/** Which sheets are counted. */
export interface SheetCount {
  readonly method: SimulatedMethod;
  /** Of each simulator of the method. */
  readonly count: number;
  readonly seed: number;
}

interface SheetArguments extends Omit<SheetCount, 'method'> {
  readonly methods: readonly SimulatedMethod[];
  /** Part of the name of what is altered; all where it is empty. */
  readonly kind: string;
  /** Whether the sheets are listed that the counts are made of. */
  readonly lists: boolean;
}

/** Reads METHOD, SHEETS and SEED from a command line. */
export function readSheetArguments(given: readonly string[]): SheetArguments {
  const [asked = 'all', count = '300', seed = '1', kind = ''] = given.filter(
    (each) => !each.startsWith('--'),
  );
  const all = Object.keys(simulations) as SimulatedMethod[]; // Object.keys widens to string
  const methods = asked === 'all' ? all : all.filter((name) => name === asked);
  if (methods.length === 0) throw new Error(`no simulated method "${asked}"; there are ${all.join(', ')}`);
  return {
    methods,
    count: wholeNumber(count, 'SHEETS'),
    seed: wholeNumber(seed, 'SEED'),
    kind,
    lists: given.includes('--list'),
  };
}

/** Largest seed of which every bench has a number of its own. */
const largest = 1_000_000_000;

function wholeNumber(text: string, name: string): number {
  const number = Number(text);
  if (/^\d+$/.test(text) && number >= 1 && number <= largest) return number;
  throw new Error(`${name} is a whole number from 1 to ${largest}, not "${text}"`);
}
