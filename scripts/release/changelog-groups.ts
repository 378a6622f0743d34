/** Groups of the changelog in their order, with the words by which changesets begin what belongs there. */
const changelogGroups = [
  { title: 'Added', words: ['Added'] },
  { title: 'Corrected values', words: ['Corrected values', 'Corrected'] },
  { title: 'Deprecated', words: ['Deprecated', 'Removed'] },
  { title: 'Schema', words: ['Schema'] },
  { title: 'Rules', words: ['Rules'] },
  { title: 'Tables', words: ['Tables'] },
  { title: 'Tool', words: ['Tool'] },
  { title: 'Documents', words: ['Docs'] },
] as const;

export type ChangelogGroup = (typeof changelogGroups)[number]['title'];

export interface ChangelogItem {
  readonly group: ChangelogGroup;
  /** Whether old tables are no longer safe by it, or old profiles or programs no longer work. */
  readonly isMajor: boolean;
  readonly text: string;
}

const words = changelogGroups.flatMap((group) => group.words);
const beginning = new RegExp(`(?<=^|\\.\\s)(?=(?:${words.join('|')}): )`);

/**
 * What the summary of a changeset says, by group: `Rules: … . Tool: …` are two items. Text without such a word is about
 * the tool; `Rules: Major: …` is a major change.
 */
export function itemsOfSummary(summary: string): ChangelogItem[] {
  const oneLine = summary.trim().replace(/\s+/g, ' ');
  return oneLine
    .split(beginning)
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map(itemOf);
}

function itemOf(part: string): ChangelogItem {
  for (const { title, words } of changelogGroups) {
    const word = words.find((candidate) => part.startsWith(`${candidate}: `));
    if (word !== undefined) return { group: title, ...withoutMark(part.slice(word.length + 2)) };
  }
  return { group: 'Tool', ...withoutMark(part) };
}

/** Stands behind the word of the group where a change is a major one. */
export const majorMark = 'Major: ';

function withoutMark(text: string): Pick<ChangelogItem, 'isMajor' | 'text'> {
  const isMajor = text.startsWith(majorMark);
  return { isMajor, text: sentence(isMajor ? text.slice(majorMark.length) : text) };
}

function sentence(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

const bumpHeading = /^### (Major|Minor|Patch) Changes$/m;

/** A changelog whose releases that are still sorted by bump are sorted by group instead, major changes before all others. */
export function groupedChangelog(changelog: string): string {
  const sections = changelog
    .split(/^(?=## )/m)
    .map((section) => (bumpHeading.test(section) ? groupedRelease(section) : section));
  return `${sections.join('').trimEnd()}\n`;
}

function groupedRelease(section: string): string {
  const [heading = '', ...parts] = section.split(/^(?=### )/m);
  const items = parts.flatMap((part) => itemsOfPart(part));
  const ofGroup = (title: ChangelogGroup, isMajor: boolean) =>
    items.filter((item) => item.group === title && item.isMajor === isMajor).map(({ text }) => text);
  const major = changelogGroups.flatMap(({ title }) =>
    ofGroup(title, true).map((text) => `**${title}:** ${text}`),
  );
  const groups = changelogGroups.map(({ title }) => groupText(title, ofGroup(title, false)));
  const texts = [groupText('Major changes', major), ...groups].filter((text) => text !== '');
  return `${heading.trimEnd()}\n\n${texts.join('\n')}\n`;
}

function groupText(title: string, texts: readonly string[]): string {
  return texts.length === 0 ? '' : `### ${title}\n\n${texts.map((text) => `- ${text}\n`).join('')}`;
}

function itemsOfPart(part: string): ChangelogItem[] {
  const isMajor = part.startsWith('### Major');
  const bullets = part.split(/^- /m).slice(1);
  return bullets.flatMap((bullet) => {
    const items = itemsOfSummary(bullet);
    // A changeset that marks no paragraph speaks of all of them.
    const areAll = isMajor && items.every((item) => !item.isMajor);
    return items.map((item) => ({ ...item, isMajor: areAll || item.isMajor }));
  });
}
