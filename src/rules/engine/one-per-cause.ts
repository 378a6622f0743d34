import { type Finding, type Severity, severities } from '../../registry/finding.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import { counted } from '../../text/words.ts';
import { explainedElsewhere, explainedInProfile } from './causes.ts';
import type { Based } from './finding-basis.ts';

/** So many findings of a rule in one profile that rest on one value have one cause. */
const fewestAgainstOne = 3;

/** A finding that is told, with the files of the profiles that it is told for. */
interface ToldFinding {
  readonly finding: Finding;
  readonly owners: readonly string[];
}

/**
 * One finding for each cause. In a profile, rows of a sheet with the same fault are told once; what rests on a place that has a
 * finding of its own is told with it, and makes it as serious as itself; and several of a rule that rest on one value are told
 * at the first of them. What rests on a place of another profile that has a finding of its own is left out, and the report
 * shows that one. So what is told of a profile is the same whichever others are judged.
 */
export function onePerCause(all: readonly Based[]): ToldFinding[] {
  const told = toldOnce(withFollowers(withoutAlikeRows(all)));
  const { standing, followersOf } = explainedElsewhere(told);
  return standing.map((one) => ({
    finding: one.finding,
    owners: [one, ...followersOf(one)].map(({ owner }) => owner),
  }));
}

function withoutAlikeRows(all: readonly Based[]): Based[] {
  const groups = groupedBy(all.filter(isInReadings), ({ finding: { rule, file, pointer, message } }) =>
    [rule, file, withoutNumbers(pointer), withoutNumbers(message)].join('\n'),
  );
  const told = new Map([...groups.values()].map((group) => [group[0], group]));
  return all.flatMap((one) => {
    if (!isInReadings(one)) return [one];
    const group = told.get(one);
    return group === undefined ? [] : rowsToldOnce(one, group);
  });
}

function rowsToldOnce(first: Based, group: readonly Based[]): readonly Based[] {
  const { finding } = first;
  const last = group.at(-1)?.finding.line ?? finding.line;
  if (last === finding.line) return group;
  const more = counted(group.length - 1, 'more row');
  const message = `${finding.message}; the same in ${more} down to line ${last}`;
  return [{ ...first, finding: { ...finding, message } }];
}

function isInReadings({ finding }: Based): boolean {
  return /^\/observations\b/.test(finding.pointer);
}

function withoutNumbers(text: string): string {
  return text.replaceAll(/\d+/g, '#');
}

/** Each finding that no other one of its profile explains, with those that follow from it. */
function withFollowers(all: readonly Based[]): Based[] {
  const { standing, followersOf } = explainedInProfile(all);
  return standing.map((one) => ({ ...one, finding: withTold(one.finding, followersOf(one)) }));
}

/** A finding with what follows from it in its message; of what is said of one place, the most serious comes first. */
function withTold(finding: Finding, explained: readonly Based[]): Finding {
  const followers = explained.map((one) => one.finding);
  const severity = mostSerious([finding, ...followers]);
  const ofPlace = [finding, ...followers.filter((one) => isSamePlace(one, finding))];
  const main = ofPlace.find((one) => one.severity === severity) ?? finding;
  const [first, ...others] = [finding, ...followers].filter((one) => one !== main);
  if (first === undefined) return finding;
  const more = others.length === 0 ? '' : ` (and ${counted(others.length, 'more finding')})`;
  const link = isSamePlace(first, main) ? 'Besides' : 'From this follows';
  return { ...main, severity, message: `${main.message}. ${link}: ${first.message}${more}` };
}

function isSamePlace(one: Finding, other: Finding): boolean {
  return one.pointer === other.pointer && one.file === other.file && one.line === other.line;
}

function toldOnce(all: readonly Based[]): Based[] {
  const gone = new Set<Based>();
  const instead = new Map<Based, Based>();
  const blaming = all.filter(({ blames }) => blames.length > 0);
  const ofRuleAndProfile = groupedBy(blaming, ({ finding, owner }) => `${finding.rule}\n${owner}`);
  for (const group of ofRuleAndProfile.values()) {
    for (const members of byBlamedPlace(group)) {
      const [first, ...others] = members.filter((one) => !gone.has(one));
      if (first === undefined || others.length + 1 < fewestAgainstOne) continue;
      for (const one of others) gone.add(one);
      instead.set(first, { ...first, finding: withOthers(first.finding, others) });
    }
  }
  return all.filter((one) => !gone.has(one)).map((one) => instead.get(one) ?? one);
}

/** Findings by the place that they rest on, the one that most of them share first. */
function byBlamedPlace(all: readonly Based[]): Based[][] {
  const pairs = all.flatMap((one) => one.blames.map((place) => ({ one, place })));
  const groups = groupedBy(pairs, ({ place }) => `${place.file}\n${place.pointer}`);
  return [...groups.values()].map((group) => group.map(({ one }) => one)).sort((a, b) => b.length - a.length);
}

/** More places than this take the reader's eye off the first one. */
const mostPlaces = 3;

const acceptEach = 'What is right all the same is acknowledged at each of these places.';

function withOthers(first: Finding, others: readonly Based[]): Finding {
  const lines = others.slice(0, mostPlaces).map(({ finding: { line } }) => line);
  const more = others.length > mostPlaces ? ', …' : '';
  const severity = mostSerious([first, ...others.map(({ finding }) => finding)]);
  return {
    ...first,
    severity,
    message: `${first.message}. The same at ${counted(others.length, 'more place')}: lines ${lines.join(', ')}${more}`,
    ...(severity !== 'error' && { help: [first.help, acceptEach].filter((text) => text !== null).join(' ') }),
  };
}

function mostSerious(findings: readonly Finding[]): Severity {
  return severities.find((each) => findings.some(({ severity }) => severity === each)) ?? 'note';
}
