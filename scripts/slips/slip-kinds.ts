/** A kind of slip: its row of the table. */
interface SlipKindFacts {
  /** The share of it that checking should catch, as a fraction; null where there is no aim. */
  readonly aim: number | null;
}

const certain = { aim: 1 };
const nearlyCertain = { aim: 0.95 };
const open = { aim: null };

/** The slips that are planted, in the order of the table. */
export const slipKinds = {
  // Impossible or contradictory.
  x1000: certain,
  'ends swapped': certain,
  'below zero': certain,
  zero: certain,
  'raised above its interval': certain,
  'raised above its readings': certain,
  'date in the future': certain,
  'dangling reference': certain,
  'pasted file with its old id': certain,
  'wrong basis word': certain,
  'dropped source': certain,
  'dropped evidence': certain,
  'condition of another trial': certain,
  'evidence of another trial': certain,
  'source read before it was issued': certain,
  // Values.
  x10: nearlyCertain,
  '/10': nearlyCertain,
  'Fahrenheit under Cel': nearlyCertain,
  'Kelvin under Cel': nearlyCertain,
  'right number, wrong unit': nearlyCertain,
  'number of another unit': nearlyCertain,
  'transposed > 30 %': { aim: 0.8 },
  'transposed, smaller': open,
  'digit lost': open,
  'digit doubled': open,
  'two values exchanged': open,
  'axes exchanged': open,
  // Readings.
  'reading +-10 %, flow ladder': nearlyCertain,
  'reading +-10 %, other methods': nearlyCertain,
  'reading +-5 %, flow ladder': { aim: 0.5 },
  'reading +-5 %, other methods': { aim: 0.5 },
  'reading x10 or /10': nearlyCertain,
  'reading transposed > 30 %': { aim: 0.8 },
  'reading changed after adoption': nearlyCertain,
  'columns exchanged': open,
  // Copies and what is left out.
  'copied trial': nearlyCertain,
  'pasted rows': nearlyCertain,
  'source of another product': nearlyCertain,
  'dropped condition': nearlyCertain,
  'dropped interval': nearlyCertain,
  'dropped digest': nearlyCertain,
  'block of another filament, one key': { aim: 0.7 },
  'block of another filament, several': { aim: 0.7 },
  'polymer exchanged': open,
  'filler dropped': open,
  'nozzle exchanged': open,
  'date of another year': open,
  // What the form of a file refuses, as a plain JSON Schema tool does.
  'unit of another dimension': certain,
  'misspelled key': certain,
  'misspelled word': certain,
  'decimal comma': certain,
  'number without unit': certain,
  'merge markers': certain,
  'key written twice': certain,
  'day that does not exist': certain,
} as const satisfies Readonly<Record<string, SlipKindFacts>>;

export type SlipKind = keyof typeof slipKinds;

export const slipKindNames = Object.keys(slipKinds) as readonly SlipKind[];

/** The share of a kind that checking should catch, as a fraction; null where there is no aim. */
export function aimOf(kind: SlipKind): number | null {
  return slipKinds[kind].aim;
}
