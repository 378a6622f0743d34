/** Groups of the changelog in their order, with the words by which changesets begin what belongs there. */
const changelogGroups = [
  { title: 'Added', words: ['Added'] },
  { title: 'Corrected values', words: ['Corrected values', 'Corrected'] },
  { title: 'Deprecated', words: ['Deprecated', 'Removed'] },
  { title: 'Schema', words: ['Schema'] },
  { title: 'Rules', words: ['Rules'] },
  { title: 'Tool', words: ['Tool'] },
] as const;

export type ChangelogGroup = (typeof changelogGroups)[number]['title'];

export interface ChangelogItem {
  readonly group: ChangelogGroup;
  readonly text: string;
}

const words = changelogGroups.flatMap((group) => group.words);
const beginning = new RegExp(`(?<=^|\\.\\s)(?=(?:${words.join('|')}): )`);

/**
 * What the summary of a changeset says, by group: `Rules: … . Tool: …` are two items. Text without such a word is about
 * the tool.
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
    if (word !== undefined) return { group: title, text: sentence(part.slice(word.length + 2)) };
  }
  return { group: 'Tool', text: part };
}

function sentence(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

const bumpHeading = /^### (Major|Minor|Patch) Changes$/m;

/** A changelog whose releases that are still sorted by bump are sorted by group instead. */
export function groupedChangelog(changelog: string): string {
  return changelog
    .split(/^(?=## )/m)
    .map((section) => (bumpHeading.test(section) ? groupedRelease(section) : section))
    .join('');
}

function groupedRelease(section: string): string {
  const [heading = '', ...parts] = section.split(/^(?=### )/m);
  const items = parts.flatMap((part) => itemsOfPart(part));
  const groups = changelogGroups.flatMap(({ title }) => {
    const texts = items.filter(({ group }) => group === title).map(({ text }) => `- ${text}\n`);
    return texts.length === 0 ? [] : [`### ${title}\n\n${texts.join('')}`];
  });
  return `${heading.trimEnd()}\n\n${groups.join('\n')}\n`;
}

function itemsOfPart(part: string): ChangelogItem[] {
  const isMajor = part.startsWith('### Major');
  const bullets = part.split(/^- /m).slice(1);
  return bullets
    .flatMap(itemsOfSummary)
    .map(({ group, text }) => ({ group, text: isMajor ? `**Major:** ${text}` : text }));
}
