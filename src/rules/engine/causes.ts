import { isAtLeast } from '../../registry/finding.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import type { Based, BlamedPlace } from './finding-basis.ts';

/** Findings that nothing explains, and what follows from each of them. */
interface Explained {
  readonly standing: readonly Based[];
  readonly followersOf: (standing: Based) => readonly Based[];
}

/** What follows from what within each profile. */
export function explainedInProfile(all: readonly Based[]): Explained {
  const places = foundAt(all, ({ owner, finding }) => [{ file: owner, pointer: finding.pointer }]);
  return explained(all, (one) =>
    [...formCauses(one, places), ...blamedCauses(one, places, true)].filter(
      ({ finding }) => finding.rule !== one.finding.rule,
    ),
  );
}

/**
 * What follows from a finding of another profile: one at a blamed place, or one that blames the same place in its own profile. The
 * cause must be as serious, since its own profile knows nothing of what follows elsewhere; and what is about danger stands
 * where the danger is.
 */
export function explainedElsewhere(all: readonly Based[]): Explained {
  const places = foundAt(all, ({ owner, blames, finding }) => [
    { file: owner, pointer: finding.pointer },
    ...blames.filter(({ file }) => file === owner),
  ]);
  return explained(all, (one) =>
    one.finding.rule.startsWith('safety/')
      ? []
      : blamedCauses(one, places, false).filter(({ finding }) =>
          isAtLeast(finding.severity, one.finding.severity),
        ),
  );
}

function explained(all: readonly Based[], explanations: (one: Based) => readonly Based[]): Explained {
  const causeOf = new Map<Based, Based>();
  const rootOf = (one: Based): Based => {
    const cause = causeOf.get(one);
    return cause === undefined ? one : rootOf(cause);
  };
  for (const one of all) {
    if (one.finding.severity === 'note') continue;
    const cause = explanations(one).find(
      (other) => other.finding.severity !== 'note' && rootOf(other) !== one,
    );
    if (cause !== undefined) causeOf.set(one, cause);
  }
  const followers = new Map<Based, Based[]>();
  for (const one of causeOf.keys()) {
    const known = followers.get(rootOf(one));
    if (known === undefined) followers.set(rootOf(one), [one]);
    else known.push(one);
  }
  return {
    standing: all.filter((one) => !causeOf.has(one)),
    followersOf: (one) => followers.get(one) ?? [],
  };
}

/** What is found at a place of a profile and within it, one finding of each rule: of a hostile file there are very many. */
type FoundAtPlaces = (owner: string, place: string) => readonly Based[];

function foundAt(all: readonly Based[], placesOf: (one: Based) => readonly BlamedPlace[]): FoundAtPlaces {
  const asked = new Set(all.flatMap(askedPlaces));
  const pairs = all.flatMap((one) =>
    placesOf(one).flatMap(({ file, pointer }) =>
      placesAround(pointer).flatMap((place) => {
        const key = `${file}\n${place}`;
        return asked.has(key) ? [{ one, key }] : [];
      }),
    ),
  );
  const groups = groupedBy(pairs, ({ key }) => key);
  const oneOfEach = new Map(
    [...groups].map(([place, group]) => {
      const ofRule = groupedBy(group, ({ one }) => `${one.finding.rule}\n${isOfAllReadings(one)}`);
      return [place, [...ofRule.values()].flatMap(([first]) => (first === undefined ? [] : [first.one]))];
    }),
  );
  return (owner, place) => oneOfEach.get(`${owner}\n${place}`) ?? [];
}

/** Where the causes of a finding are looked for; of a file with a hundred thousand unknown keys these are few places. */
function askedPlaces({ owner, blames, finding: { rule, pointer } }: Based): string[] {
  const own = rule.startsWith('shape/') ? ['/kind'] : isOfForm(rule) ? [] : [pointer];
  return [
    ...own.map((place) => `${owner}\n${place}`),
    ...blames.map((place) => `${place.file}\n${place.pointer}`),
  ];
}

/** A place and those that it lies in, but for the whole document. */
function placesAround(pointer: string): string[] {
  const steps = pointer.split('/');
  return steps.slice(1).map((_, index) => steps.slice(0, index + 2).join('/'));
}

/** What is wrong with the form of a finding's own place. */
function formCauses({ owner, finding: { rule, pointer } }: Based, places: FoundAtPlaces): Based[] {
  // By the schema of another kind nothing of a document fits.
  if (rule.startsWith('shape/'))
    return places(owner, '/kind').filter((other) => other.finding.rule === 'identity/id-path');
  return isOfForm(rule) ? [] : places(owner, pointer).filter((other) => isOfForm(other.finding.rule));
}

function blamedCauses(one: Based, places: FoundAtPlaces, isOwn: boolean): Based[] {
  const { owner, blames, finding } = one;
  const causes = blames
    .filter(({ file }) => (file === owner) === isOwn)
    .flatMap(({ file, pointer }) => places(file, pointer))
    // That readings have changed tells of their trial that something did, never what.
    .filter((other) => !isOwn || other.finding.rule !== 'evidence/readings-changed');
  // What is said of all readings of a trial together tells of their result, and not why they are other ones.
  return isOwn && isOfAllReadings(one) && finding.pointer === '/observations'
    ? causes.filter((other) => !isOfAllReadings(other) || other.finding.rule === 'evidence/unreducible')
    : causes;
}

function isOfAllReadings({ owner, finding: { file, pointer } }: Based): boolean {
  return pointer === '/observations' && file === owner;
}

function isOfForm(rule: string): boolean {
  return /^(?:shape|units|syntax)\//.test(rule);
}
