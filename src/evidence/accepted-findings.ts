import { groupedBy } from '../registry/grouped-by.ts';
import type { ReadDocument } from '../registry/profile.ts';
import { inPrint } from '../units/in-print.ts';
import { type Acknowledgement, acknowledgementsOf, isLive } from './acknowledgement.ts';

/** What an acknowledgement knows a finding by. */
export interface Acceptable {
  readonly rule: string;
  /** JSON pointer (RFC 6901) to the place in the document. */
  readonly pointer: string;
  readonly found: string | null;
}

/**
 * The findings of a document that its acknowledgements accept on a day, each with the first entry that does. An entry
 * accepts what its rule finds at one place: where that stands in a list does not matter, since it is known by what was
 * found. Of several places where the same is found it accepts the one that it names, or none.
 */
export function acceptedFindings<Found extends Acceptable>(
  document: ReadDocument,
  findings: readonly Found[],
  today: string,
): Map<Found, Acknowledgement> {
  const live = acknowledgementsOf(document).filter((entry) => isLive(entry, today));
  const accepted = new Map<Found, Acknowledgement>();
  if (live.length === 0) return accepted;
  const alike = groupedBy(findings, subject);
  for (const [about, entries] of groupedBy(live, subject)) {
    const candidates = alike.get(about) ?? [];
    for (const [finding, entry] of assigned(entries, candidates)) accepted.set(finding, entry);
  }
  return accepted;
}

/** Whether a finding of the same rule lies at the place of an acknowledgement or below it, wherever in its lists. */
export function isAtPlace({ rule, at }: Acknowledgement, finding: Acceptable): boolean {
  return finding.rule === rule && isWithin(anywhereInLists(finding.pointer), anywhereInLists(at));
}

/** Whether an acknowledgement names what was found; quantities may be spelled as print does. */
export function namesFound(entry: Acknowledgement, finding: Acceptable): boolean {
  return subject(entry) === subject(finding);
}

/** What is accepted: a rule and what it has found, as a text that is the same for both spellings of a quantity. */
function subject({ rule, found }: { readonly rule: string; readonly found: string | null }): string {
  return JSON.stringify([rule, found === null ? null : inPrint(found.replace(/\s+/g, ' ').trim())]);
}

/** Findings of one rule that have found the same, each with its entry. */
function* assigned<Found extends Acceptable>(
  entries: readonly Acknowledgement[],
  findings: readonly Found[],
): Generator<readonly [Found, Acknowledgement]> {
  const free = groupedBy(findings, ({ pointer }) => placeOf(pointer));
  const moved: Acknowledgement[] = [];
  for (const entry of firstOfEachPlace(entries)) {
    const named = placesWith(free, ({ pointer }) => isWithin(pointer, entry.at));
    if (named.length === 1) yield* taken(free, named, [entry]);
    else moved.push(entry);
  }
  for (const group of groupedBy(moved, ({ at }) => anywhereInLists(at)).values()) {
    const left = placesWith(free, (finding) => group.some((entry) => isAtPlace(entry, finding)));
    // Which of equals an entry meant is unknown, and need not be known where there is an entry for each.
    if (left.length <= group.length) yield* taken(free, left, group);
  }
}

function firstOfEachPlace(entries: readonly Acknowledgement[]): readonly Acknowledgement[] {
  return [...groupedBy(entries, ({ at }) => at).values()].flatMap(([first]) => first ?? []);
}

function placesWith<Found>(
  free: ReadonlyMap<string, readonly Found[]>,
  isMeant: (finding: Found) => boolean,
): readonly string[] {
  return [...free].filter(([, here]) => here.some(isMeant)).map(([place]) => place);
}

/** Gives each place to an entry, so that no other one gets it. */
function* taken<Found extends Acceptable>(
  free: Map<string, Found[]>,
  places: readonly string[],
  entries: readonly Acknowledgement[],
): Generator<readonly [Found, Acknowledgement]> {
  for (const [index, place] of places.entries()) {
    const entry = entries[index];
    for (const finding of free.get(place) ?? [])
      if (entry !== undefined && isAtPlace(entry, finding)) yield [finding, entry];
    free.delete(place);
  }
}

/** The innermost item of a list that a pointer leads into, the statement for instance; else the place itself. */
function placeOf(pointer: string): string {
  return /^.*\/\d+(?=\/|$)/.exec(pointer)?.[0] ?? pointer;
}

function anywhereInLists(pointer: string): string {
  return pointer.replace(/\/\d+(?=\/|$)/g, '/0');
}

function isWithin(pointer: string, place: string): boolean {
  return pointer === place || pointer.startsWith(`${place}/`);
}
