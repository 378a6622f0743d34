import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const original = fileURLToPath(new URL('./fixtures/registry/', import.meta.url));

const read = new Map(
  readdirSync(original, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => /\.(?:csv|ya?ml)$/.test(file))
    .map((file) => [file, readFileSync(original + file, 'utf8')] as const),
);

/** The texts of the sample registry by their paths from its root, to be changed at will. */
export function sampleTexts(): Map<string, string> {
  return new Map(read);
}

/** A text in which a stretch is replaced, which must stand there exactly once. */
export function replacedOnce(text: string, from: string, to: string): string {
  return aroundOnly(text, from).join(to);
}

/** What stands before and after a stretch of a text. */
export function aroundOnly(text: string, stretch: string): readonly [string, string] {
  const [before, after, ...more] = text.split(stretch);
  if (before === undefined || after === undefined || more.length > 0) {
    throw new Error(`"${stretch}" stands ${more.length + (after === undefined ? 0 : 1)} times in the file`);
  }
  return [before, after];
}
