/** How people read one quantity that a method finds. */
export interface ResultWords {
  /** What people call it, where that is not its name in words. */
  readonly name?: string;
  /** Unit in which people read it, where that is not the canonical one. */
  readonly unit?: string;
  /** Digits that a reading of it is worth; 3 unless given. */
  readonly digits?: number;
  /** What else its value, in the canonical unit, means. */
  readonly inOtherWords?: (value: number) => string;
}

/** What a method says of readings that do not bracket a limit; each a clause that others build their sentence of. */
export interface OpenWords {
  /** Why the limit is above, or below, what the readings show. */
  readonly above: string;
  readonly below: string;
  /** What the readings showed where they give a bound. */
  readonly bound: string;
  /** Why there is no interval. */
  readonly noInterval: string;
  /** Why the readings support no limit at all, and what to do on the bench. */
  readonly noSupport: string;
  readonly help: string;
}

/** The words of most methods. */
export const usualOpenWords: OpenWords = {
  above: 'the readings end before it',
  below: 'the readings start beyond it',
  bound: 'every reading passed',
  noInterval: 'the readings do not bracket the limit',
  noSupport: 'no reading lies on the safe side',
  help: 'Run a wider series',
};
