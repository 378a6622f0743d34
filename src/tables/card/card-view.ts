/** A number to type in, with what it is and what to know of it. */
export interface CardSetting {
  readonly name: string;
  /** With its unit: `230 °C`, or `not stated`. */
  readonly value: string;
  /** Empty where there is nothing to add. */
  readonly note: string;
}

/** A feature in the table of speeds. */
export interface CardFeature {
  readonly name: string;
  /** In mm/s, one for each of the layer heights; null where a height has none. */
  readonly speeds: readonly (number | null)[];
  /** In mm/s2. */
  readonly acceleration: number;
  /** With its unit, or `not stated`; empty for moves that print nothing. */
  readonly fan: string;
  /** What holds the speed, and from which layer height on: `quality (assumed)*, melt†1 from 0.42 mm`. */
  readonly limitedBy: string;
}

/** Something to know, in one line. */
export interface CardNote {
  /** `Warning`, `Quirk 1`. */
  readonly label: string;
  readonly text: string;
}

/** What stands on a card: all in words and units of print, cut to what fits on one page. */
export interface CardView {
  readonly title: string;
  /** Nozzle, line width, policy, date of the data. */
  readonly facts: readonly string[];
  /** `Simulated readings` where they are; null where everything is real. */
  readonly origin: string | null;
  /** What to set before the first layer, the most important first. */
  readonly settings: readonly CardSetting[];
  /** Whether names and bounds are short, so that numbers can be larger and notes have two lines. */
  readonly isRoomy: boolean;
  /** In mm, from low to high: three at most. */
  readonly layerHeights: readonly number[];
  /** In mm. */
  readonly lineWidth: number;
  readonly features: readonly CardFeature[];
  /** What the marks beside bounds stand for; empty where there is none. */
  readonly marks: readonly string[];
  /** Retraction, pressure compensation, shortest layer. */
  readonly besides: readonly CardSetting[];
  readonly notes: readonly CardNote[];
  /** What had no room and stands on the pages behind: `2 more quirks`. */
  readonly overleaf: readonly string[];
  /** What it was derived from, with versions. */
  readonly versions: readonly string[];
  /** Eight digits that change when anything changes that it was derived from. */
  readonly digest: string;
}

/** How many layer heights, warnings and quirks a card has room for. */
export const cardRoom = {
  layerHeights: 3,
  warnings: 2,
  quirks: 3,
  /** How many quirks stand by their numbers beside a bound. */
  quirkMarks: 2,
  flowNoteLength: 60,
  noteLength: 90,
  /** Lengths of the title and of what limits a feature up to which a card is roomy, and of notes on it. */
  roomy: { title: 48, limitedBy: 48, note: 136 },
  versionLength: 28,
} as const;

/** A text on one line of a card: cut between two words, with `…` where something was left out. */
export function firstLine(text: string, length: number = cardRoom.noteLength): string {
  const whole = text.trim().replace(/\s+/g, ' ');
  if (whole.length <= length) return whole;
  const cut = whole.slice(0, length - 1);
  // A single word that is too long is cut inside.
  const end = cut.lastIndexOf(' ');
  const kept = end > length / 2 ? cut.slice(0, end) : cut;
  // A number without the unit that was cut off would be taken for another, and an arrow leads nowhere.
  return `${kept.replace(/(?: +(?:[\d.,–]+|->))+$/, '').replace(/[ ,;:.]+$/, '')}…`;
}

/** The lowest of some sorted numbers, the highest, and those spread evenly between them, `count` in all at most. */
export function spread(sorted: readonly number[], count: number): number[] {
  if (sorted.length <= count) return [...sorted];
  const last = sorted.length - 1;
  return Array.from({ length: count }, (_, index) => sorted[Math.round((index * last) / (count - 1))] ?? 0);
}
