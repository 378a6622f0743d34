import { majorMark } from './changelog-groups.ts';

const majorLine = /^("meltbounds": )major$/m;

/** `Corrected values: `, at the beginning of a paragraph. */
const groupWord = /^(?:[A-Z][a-z]+(?: [a-z]+)?: )?/;

/**
 * A changeset as it counts for the next version. Before 1.0.0 a breaking change is a minor one (Semantic Versioning 2.0.0, 4): what
 * asks for a major version asks for a minor one then, and its paragraphs say that they are major, unless some of them say so
 * already. To the very first release nothing is a change.
 */
export function beforeFirstStable(changeset: string, version: string): string {
  if (!version.startsWith('0.') || !majorLine.test(changeset)) return changeset;
  const [, front = '', summary = ''] = /^(---\n.*?\n---\n)(.*)$/s.exec(changeset) ?? [];
  const minor = front.replace(majorLine, '$1minor');
  const isMarked = version === '0.0.0' || summary.includes(majorMark);
  return minor + (isMarked ? summary : markedMajor(summary));
}

/** Each paragraph with the word that it is a major change, behind that of its group. */
function markedMajor(summary: string): string {
  return summary
    .split('\n\n')
    .map((paragraph) => {
      const text = paragraph.trim();
      const [word = ''] = groupWord.exec(text) ?? [];
      const rest = text.slice(word.length);
      return text === '' ? '' : `${word}${majorMark}${rest}`;
    })
    .join('\n\n')
    .concat('\n');
}

/** A lock file of npm that names another version of the package that it belongs to. */
export function lockOfVersion(lock: string, version: string): string {
  const content = JSON.parse(lock) as { version: string; packages: Record<string, { version?: string }> };
  const own = { ...content.packages[''], version };
  return `${JSON.stringify({ ...content, version, packages: { ...content.packages, '': own } }, null, 2)}\n`;
}
